import { describe, expect, it } from 'vitest';
import type { ArcRing } from '../../geometry/arrangement/types.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { edgeEnds } from '../../geometry/region/nearest.ts';
import type { Probe, RoomRegion } from '../../geometry/region/types.ts';
import { areaBounds } from '../helpers/certified-bounds.ts';
import { howMany } from '../helpers/how-many.ts';
import { Dice } from '../helpers/random-level/dice.ts';
import { randomPlan } from '../helpers/random-level.ts';
import { placeFaults } from './region-against-check.ts';

/*
 * Many levels, each tested less closely than in `oracle.test.ts`: no exception, closed boundaries, areas between bounds
 * that squares alone certify, and at 100 places of each level the region's answer compared with a check's. Every fifth level is
 * one where items meet exactly or almost. The environment may select more: STILLSPOT_MANY=10000.
 */
const LEVELS = Number(process.env.STILLSPOT_MANY ?? howMany(60, 500));
const FIRST = Number(process.env.STILLSPOT_FIRST ?? 100_001);
const BATCH = 250;
const PLACES = 100;
/** Half a side of the smallest square of the bounds, mm. It is coarse because there are many levels; the bounds hold for any size. */
const FINEST = 30;

const seen = { levels: 0, rooms: 0, rings: 0, places: 0, inside: 0, banded: 0, boundedArea: 0, bracket: 0 };

function faults(seed: number): string[] {
  const plan = randomPlan(seed);
  const level = plan.levels[0] as Level;
  const [first] = level.detectors;
  const probe: Probe = { base: 762, radius: first?.radius ?? 50.8, tall: first?.tall ?? 25.4 };
  try {
    const model = buildLevel(level);
    const region = levelRegion(plan, model, probe);
    seen.levels++;
    return [
      ...region.rooms.flatMap((room) => roomFaults(plan, model, probe, room)),
      ...placeFaults({ plan, model, probe, rooms: region.rooms }, PLACES, new Dice(seed), seen),
    ];
  } catch (error) {
    return [`threw ${error instanceof Error ? error.stack : error}`];
  }
}

function roomFaults(plan: Plan, model: LevelModel, probe: Probe, { room, rings, area, barred }: RoomRegion): string[] {
  seen.rooms++;
  seen.rings += rings.length;
  const broken = rings.filter((ring) => !isClosed(ring)).map(() => `${room.key}: a boundary that does not close`);
  if (barred) return area === 0 && rings.length === 0 ? broken : [...broken, `${room.key}: barred, yet ${area} mm²`];
  const { least, most } = areaBounds(plan, model, probe, room, FINEST);
  seen.boundedArea += area;
  seen.bracket += most - least;
  const isBetween = area >= least * (1 - 1e-9) - 1 && area <= most * (1 + 1e-9) + 1;
  return isBetween ? broken : [...broken, `${room.key}: ${area} mm² is not between ${least} and ${most}`];
}

/** Returns whether every edge starts where the one before ends, within the tolerance of `linkRings` and rounding. */
function isClosed(ring: ArcRing): boolean {
  return ring.every((edge, i) => {
    const [, end] = edgeEnds(ring[(i + ring.length - 1) % ring.length] as (typeof ring)[number]);
    const [start] = edgeEnds(edge);
    return Math.hypot(start[0] - end[0], start[1] - end[1]) < 0.01;
  });
}

describe('many random levels', () => {
  const batches = Array.from({ length: Math.ceil(LEVELS / BATCH) }, (_, i) => FIRST + i * BATCH);
  it.each(batches)('seeds from %d', { timeout: 600_000 }, (first) => {
    const wrong: string[] = [];
    for (let seed = first; seed < Math.min(first + BATCH, FIRST + LEVELS); seed++) {
      wrong.push(...faults(seed).map((text) => `seed ${seed}: ${text}`));
    }
    expect(wrong).toEqual([]); // the list is the message
  });

  it('have shown something', () => {
    if (process.env.STILLSPOT_TALLY) console.info(seen);
    expect(seen.levels).toBe(LEVELS);
    expect(seen.inside).toBeGreaterThan(5 * LEVELS);
    expect(seen.banded).toBeLessThan(0.001 * seen.places);
    expect(seen.boundedArea).toBeGreaterThan(LEVELS);
  });
});
