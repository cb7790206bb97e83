import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../../geometry/check/check-detector.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { sunPlace } from '../../../geometry/recheck/sun-place.ts';
import { sunPosition } from '../../../geometry/sun/position.ts';
import { seededRandom } from '../../helpers/seeded-level.ts';
import { houseOf } from '../../helpers/sun-room.ts';
import { sunnyHouse } from '../../helpers/sunny-house.ts';

/** Number of houses. The environment may select more: SUN_SECOND=500. */
const HOUSES = Number(process.env.SUN_SECOND ?? 8);

function houseWithDetectors(seed: number): Plan {
  const random = seededRandom(seed);
  const plan = sunnyHouse(random);
  const detectors = Array.from({ length: 4 }, (_, i): Detector => {
    const at = [300 + random() * 6000, 300 + random() * 4000] as const;
    return { id: `d${i}`, label: '', at, base: 762, radius: 50.8, tall: 25.4, pair: null, support: null };
  });
  const [level] = plan.levels;
  return { ...plan, levels: level ? [{ ...level, detectors }] : [] };
}

function bothAgree(plan: Plan, isNotRun: boolean): void {
  const [first, second] = [checkPlan(plan), recheck(plan)];
  if (!second.ok) throw new Error(second.cause);
  for (const { levels } of [first, second])
    for (const { checks } of levels[0]?.detectors ?? []) {
      const rows = checks.filter(({ rule }) => rule === 'direct-sun');
      expect(rows.length).toBeGreaterThan(0);
      for (const { notRun, verdict } of rows) {
        expect(notRun).toBe(isNotRun);
        if (isNotRun) expect(verdict).toBe('unknown');
      }
    }
  for (const { detectors } of compareOpinions(first, second, plan.tapeTolerance))
    for (const { computed } of detectors) expect(computed).toMatchObject({ how: 'twice' });
}

describe('direct sun, computed twice', () => {
  it('both stand where the other says that the sun stands', () => {
    const random = seededRandom(42);
    let compared = 0;
    for (let n = 0; n < 2000; n++) {
      const [instant, latitude, longitude] = [random() * 3e12, random() * 140 - 70, random() * 360 - 180];
      const [one, two] = [sunPosition(instant, latitude, longitude), sunPlace(instant, latitude, longitude)];
      if (one.altitude < 3) continue;
      compared++;
      const across = (((one.azimuth - two.azimuth + 540) % 360) - 180) * Math.cos((one.altitude * Math.PI) / 180);
      expect(Math.hypot(across, one.altitude - two.altitude)).toBeLessThan(0.02);
    }
    // The sun is up less than half of the time, and lower than 3 degrees for some of that.
    expect(compared).toBeGreaterThan(850);
  });

  it('a test of one instant runs, one that ends before it starts is undecided', () => {
    const at = { id: 'd', label: '', at: [2500, 1000] as const, base: 762, radius: 50.8, tall: 25.4, pair: null };
    const rowsFor = (end: string | undefined) => {
      const opinion = recheck(houseOf({ more: { detectors: [at] }, ...(end ? { visit: { end } } : {}) }));
      return opinion.ok ? opinion.levels[0]?.detectors[0]?.checks.filter(({ rule }) => rule === 'direct-sun') : [];
    };
    expect(rowsFor(undefined)).toMatchObject([{ subject: 'glass', verdict: 'blocked', notRun: false }]);
    expect(rowsFor('2003-10-17T12:30:29-07:00')).toMatchObject([{ subject: null, verdict: 'unknown', notRun: false }]);
  });

  it.each<[string, Partial<Plan['site']>, Partial<Level>, boolean]>([
    ['north is not answered', { northAnswered: false }, {}, true],
    ['neither north nor place is', { northAnswered: false, latitude: null }, {}, true],
    ['north is not answered, and a person has looked', { northAnswered: false }, { lookedFor: ['direct-sun'] }, false],
    ['north is not answered, and no exterior opening is drawn', { northAnswered: false }, { openings: [] }, false],
    ['north is answered', { northAnswered: true }, {}, false],
  ])('both run or do not run it where %s', (_, site, more, isNotRun) => {
    const plan = houseWithDetectors(3);
    const [level] = plan.levels as [Level];
    bothAgree({ ...plan, site: { ...plan.site, ...site }, levels: [{ ...level, ...more }] }, isNotRun);
  });

  it('both need no north for a plain door', () => {
    const plan = houseWithDetectors(3);
    const [level] = plan.levels as [Level];
    const openings = level.openings.map((one) => ({ ...one, glazed: false }));
    bothAgree({ ...plan, site: { ...plan.site, northAnswered: false }, levels: [{ ...level, openings }] }, false);
  });

  it(`of ${HOUSES} houses no detector is nearer to the sun by the second, and fewer than 5 % are much farther`, {
    timeout: 600_000,
  }, () => {
    let [near, much] = [0, 0];
    for (let seed = 1; seed <= HOUSES; seed++) {
      const plan = houseWithDetectors(seed);
      const [first, second] = [checkPlan(plan), recheck(plan)];
      if (!second.ok) throw new Error(second.cause);
      for (const { detectors } of compareOpinions(first, second, plan.tapeTolerance))
        for (const { id, computed } of detectors) {
          if (computed.how !== 'twice') expect([seed, id, computed]).toEqual([]);
        }
      first.levels[0]?.detectors.forEach((report, i) => {
        const least = (rows: readonly { rule: string; measured: number | null }[]) =>
          Math.min(
            ...rows.flatMap(({ rule, measured }) => (rule === 'direct-sun' && measured !== null ? [measured] : [])),
          );
        const [one, two] = [least(report.checks), least(second.levels[0]?.detectors[i]?.checks ?? [])];
        if (one === Number.POSITIVE_INFINITY) return;
        near++;
        if (two - one > 75 && Math.abs(two - one) > 0.02 * two) {
          much++;
        }
      });
    }
    // Single rays miss the end of a beam that narrows to a point.
    expect(near).toBeGreaterThan(HOUSES * 2);
    expect(much).toBeLessThan(0.05 * near);
  });
});
