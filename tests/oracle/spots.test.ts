import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { supports } from '../../geometry/check/support.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Level, Plan, XY } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { arcRingsContain } from '../../geometry/region/nearest.ts';
import { bestPairs } from '../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../geometry/search/best-spots.ts';
import { marginField } from '../../geometry/search/field/margin-field.ts';
import { howMany } from '../helpers/how-many.ts';
import { Dice } from '../helpers/random-level/dice.ts';
import { randomPlan } from '../helpers/random-level.ts';
import { CLOSE } from './compare-checks.ts';
import { spareAt } from './compare-spots.ts';
import { Geos } from './geos.ts';
import { type OracleLevel, oracleLevel } from './geos-oracle.ts';
import { blockersOf } from './region.ts';
import { oracleRows, SHORTFALL } from './rules.ts';

const LEVELS = howMany(30, 150);
/** "The first is within 1.6 of the best there is." */
const TOLERANCE = 1.6;
/** The limits of a pair, rim to rim: 4 and 8 inches. */
const [LEAST_GAP, MOST_GAP] = [101.6, 203.2];

let geos: Geos;
/** Every level is built once, because the oracle takes longer for a level than for its spots. */
let levels: readonly Omit<Case, 'dice'>[];
beforeAll(async () => {
  geos = await Geos.open();
  levels = Array.from({ length: LEVELS }, (_, i) => levelOf(i + 1));
});
afterAll(() => geos.releaseAll());

interface Case {
  readonly seed: number;
  readonly plan: Plan;
  readonly oracle: OracleLevel;
  readonly model: LevelModel;
  readonly probe: Detector;
  readonly dice: Dice;
}

function levelOf(seed: number): Omit<Case, 'dice'> {
  const plan = randomPlan(seed);
  const [level] = plan.levels as [Level];
  const [probe] = level.detectors;
  if (!probe) throw new Error('a level without a detector');
  return { seed, plan, oracle: oracleLevel(geos, plan, level), model: buildLevel(level), probe };
}

function eachLevel(look: (one: Case) => void): void {
  for (const one of levels) look({ ...one, dice: new Dice(one.seed) });
}

/** "The least over the plan and space rules", ignoring other detectors. */
function marginAt({ oracle, probe }: Case, at: XY): number {
  const others = new Set<string | null>(oracle.level.detectors.map(({ id }) => id));
  const rows = oracleRows(oracle, { ...probe, id: '', label: '', at, pair: null });
  return Math.min(
    ...rows.filter(({ bodies, subject }) => bodies.length > 0 && !others.has(subject)).map(({ margin }) => margin),
  );
}

function isAllowed({ oracle, probe }: Case, at: XY): boolean {
  return spareAt(oracle, probe, blockersOf(oracle, probe), ...at) >= -CLOSE;
}

describe('the best spots of random levels', () => {
  it('are measured as the oracle measures them', () => {
    eachLevel((one) => {
      const { plan, model, probe, dice, seed } = one;
      const open = marginField(plan, model, probe);
      for (let i = 0; i < 10; i++) {
        const at: XY = [probe.at[0] + dice.between(-3000, 3000), probe.at[1] + dice.between(-3000, 3000)];
        // An object that supports the probe does not obstruct it: the field is computed with its carriers.
        const carriers = model.level.objects.filter((object) => supports(object, { ...probe, at })).map(({ id }) => id);
        const field = carriers.length > 0 ? marginField(plan, model, probe, carriers) : open;
        const [got, want] = [field.margin(...at), marginAt(one, at)];
        if (Number.isFinite(want)) expect(Math.abs(got - want), `seed ${seed} at ${at}`).toBeLessThan(CLOSE);
        else expect(got, `seed ${seed} at ${at}`).toBe(want);
      }
    });
  });

  it('are allowed, and no spot that a search from many places finds has 1.6 more to spare', () => {
    let compared = 0;
    eachLevel((one) => {
      const { plan, model, probe, seed } = one;
      const [spot] = bestSpots(plan, model, probe);
      const better = climbed(one);
      if (!spot) {
        expect(better, `seed ${seed}: a spot at ${better?.at}, and none is named`).toBeNull();
        return;
      }
      expect(isAllowed(one, spot.at), `seed ${seed}: ${spot.at} is blocked`).toBe(true);
      const margin = marginAt(one, spot.at);
      if (Number.isFinite(margin)) expect(spot.margin, `seed ${seed}`).toBeCloseTo(margin, 2);
      expect(better?.margin ?? margin, `seed ${seed}: more at ${better?.at}`).toBeLessThanOrEqual(
        margin + TOLERANCE + CLOSE,
      );
      compared++;
    });
    expect(compared).toBeGreaterThan(LEVELS / 2);
  });

  it('are so for pairs too: both allowed, as far apart as a pair may be', () => {
    let compared = 0;
    eachLevel((one) => {
      const { plan, model, probe, seed } = one;
      const [pair] = bestPairs(plan, model, probe);
      if (!pair) return;
      const [a, b] = pair.at;
      const gap = Math.hypot(a[0] - b[0], a[1] - b[1]) - 2 * probe.radius;
      expect(gap, `seed ${seed}`).toBeGreaterThanOrEqual(LEAST_GAP - SHORTFALL);
      expect(gap, `seed ${seed}`).toBeLessThanOrEqual(MOST_GAP + SHORTFALL);
      expect(isAllowed(one, a) && isAllowed(one, b), `seed ${seed}: ${a} or ${b} is blocked`).toBe(true);
      const least = Math.min(marginAt(one, a), marginAt(one, b));
      if (Number.isFinite(least)) expect(pair.margin, `seed ${seed}`).toBeCloseTo(least, 2);
      compared++;
    });
    expect(compared).toBeGreaterThan(LEVELS / 3);
  });
});

/** Returns the best place found by short walks uphill from random places in the region; null if no place is in it. */
function climbed(one: Case): { at: XY; margin: number } | null {
  const { plan, model, probe, dice } = one;
  const { rooms } = levelRegion(plan, model, probe);
  const strewn = rooms.flatMap(({ rings }) => {
    const ends = rings.flat().flatMap((edge) => (edge.kind === 'line' ? [edge.from, edge.to] : [edge.center]));
    const [xs, ys] = [ends.map(([x]) => x), ends.map(([, y]) => y)];
    return Array.from(
      { length: rings.length > 0 ? 20 : 0 },
      (): XY => [dice.between(Math.min(...xs), Math.max(...xs)), dice.between(Math.min(...ys), Math.max(...ys))],
    ).filter((p) => arcRingsContain(rings, p));
  });
  let best: { at: XY; margin: number } | null = null;
  const starts = strewn.map((at) => ({ at, margin: marginAt(one, at) })).sort((a, b) => b.margin - a.margin);
  for (const start of starts.slice(0, 3)) {
    let here = start;
    for (let step = 400; step > 0.2; ) {
      const angle = dice.between(0, 2 * Math.PI);
      const at: XY = [here.at[0] + step * Math.cos(angle), here.at[1] + step * Math.sin(angle)];
      const margin = marginAt(one, at);
      if (margin > here.margin && isAllowed(one, at)) here = { at, margin };
      else step *= 0.85;
    }
    if (!best || here.margin > best.margin) best = here;
  }
  return best;
}
