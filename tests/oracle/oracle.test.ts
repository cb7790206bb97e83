import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { howMany } from '../helpers/how-many.ts';
import { Dice } from '../helpers/random-level/dice.ts';
import { randomPlan } from '../helpers/random-level.ts';
import { Clipper } from './clipper.ts';
import { compareAreas, compareWithClipper } from './compare-areas.ts';
import { CLOSE, compareChecks } from './compare-checks.ts';
import { compareSpots } from './compare-spots.ts';
import { Geos } from './geos.ts';
import { type OracleLevel, oracleLevel } from './geos-oracle.ts';
import { emptyTally } from './tally.ts';

/** Seeds 1 to this number are tested. The environment may select more; 10,000 are tested before a release. */
const LEVELS = Number(process.env.STILLSPOT_LEVELS ?? howMany(60, 500));
const BATCH = 100;
/**
 * Levels on which the two differed. The engine was wrong where two walls cross at a very small angle: the outdoors went through the crossing
 * (1125, 1601, 2320, 3172, 3652, 5838, 7816). On the others the oracle was wrong: slivers of faces a thousandth of a mm wide
 * between an outdoors and a wall (4894, 4922, 9709); the shorter of two pieces of wall between the same two ends taken for a wall that
 * turns back (4321); the joint of a thinner wall that coincides with another (2465, 5899, 6715, 8626, 9679) and of two pieces, one drawn and
 * one that extends an end, which another wall contains (2314); walls from node to node instead of their own center-line (2115, 2301).
 */
const ONCE_APART = [
  1125, 1601, 2115, 2301, 2314, 2320, 2465, 3172, 3652, 4321, 4894, 4922, 5838, 5899, 6715, 7816, 8626, 9679, 9709,
];
/** Every so many levels the areas are also enclosed between two bounds, and computed by a second library. */
const STRICT_EVERY = 20;

const tally = emptyTally();
let geos: Geos;
let clipper: Clipper;

beforeAll(async () => {
  geos = await Geos.open();
  clipper = await Clipper.open();
});
afterEach(() => geos.releaseAll());

function levelOf(plan: Plan): Level {
  const [level] = plan.levels;
  if (!level) throw new Error('a plan without a level');
  return level;
}

/** Returns all differences between engine and oracle on the level of a seed, in words. */
function differences(seed: number): string[] {
  const plan = randomPlan(seed);
  const level = levelOf(plan);
  const [probe] = level.detectors;
  if (!probe) throw new Error('a level without a detector');
  try {
    const oracle = oracleLevel(geos, plan, level);
    const model = buildLevel(level);
    tally.levels++;
    return [
      ...level.detectors.flatMap((detector) => compareChecks(oracle, model, detector, tally)),
      ...compareAreas(oracle, model, probe, seed % STRICT_EVERY === 0, tally),
      ...compareSpots(oracle, model, probe, new Dice(seed), tally),
      ...second(oracle, model, seed),
    ];
  } catch (error) {
    return [`threw ${error instanceof Error ? error.stack : error}`];
  } finally {
    geos.releaseAll();
  }
}

function second(oracle: OracleLevel, model: LevelModel, seed: number): string[] {
  const [probe] = oracle.level.detectors;
  return probe && seed % STRICT_EVERY === 1 ? compareWithClipper(oracle, model, probe, clipper) : [];
}

it('the random plans are files that the reader takes', () => {
  for (let seed = 1; seed <= 300; seed++) {
    const result = parsePlan(JSON.stringify(randomPlan(seed)));
    expect(result.ok ? [] : result.problems, `seed ${seed}`).toEqual([]);
  }
});

describe('engine and oracle agree on random levels', () => {
  const batches = Array.from({ length: Math.ceil(LEVELS / BATCH) }, (_, i) => i * BATCH + 1);
  it.each(batches)('seeds from %d', (first) => {
    const wrong: string[] = [];
    for (let seed = first; seed < first + BATCH && seed <= LEVELS; seed++) {
      wrong.push(...differences(seed).map((text) => `seed ${seed}: ${text}`));
    }
    expect(wrong).toEqual([]); // the list is the message
  });

  it.each(ONCE_APART)('seed %d', (seed) => {
    expect(differences(seed)).toEqual([]);
  });

  it('and the comparison has seen what it is for', () => {
    expect(tally.levels).toBe(LEVELS + ONCE_APART.length);
    expect(tally.worstDistance).toBeLessThan(CLOSE);
    // Half of what the generator gives: a change of the generator that empties the comparison is noticed.
    expect(tally.rooms).toBeGreaterThan(3 * LEVELS);
    expect(tally.rows).toBeGreaterThan(8 * LEVELS);
    expect(tally.openRegions).toBeGreaterThan(1.5 * LEVELS);
    expect(tally.samplesInside).toBeGreaterThan(10 * LEVELS);
    expect(tally.samplesOnTheEdge).toBeLessThan(0.01 * tally.samples);
    expect(tally.onTheEdge).toBeLessThan(0.03 * tally.verdicts);
  });
});

afterAll(() => {
  if (process.env.STILLSPOT_TALLY) console.info(tally);
});
