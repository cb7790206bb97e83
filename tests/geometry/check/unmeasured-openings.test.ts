import { describe, expect, it } from 'vitest';
import { checkDetector, checkPlan } from '../../../geometry/check/check-detector.ts';
import { openChecks } from '../../../geometry/check/looked-for.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeNotRun, headlineOf } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Opening, Plan, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { HEIGHTS, houseOf } from '../../helpers/sun-room.ts';

/** At the one instant of the exposure, light reaches y = 1451 under the drawn head. */
const [SUNLIT, NEAR, FAR] = [1000, 2000, 4000].map((y): XY => [2500, y]) as [XY, XY, XY];

function planAt(at: XY, window: Partial<Opening>, change: Partial<Level> = {}): Plan {
  const plan = houseOf({ window, more: { rooms: [{ id: 'r', name: '', use: 'den', at: [3000, 3000] }] } });
  const [level] = plan.levels;
  const detector: Detector = { ...HEIGHTS, id: 'd1', label: 'A1', at, radius: 50.8, pair: null, support: 'stand' };
  return { ...plan, levels: [{ ...(level as Level), ...change, detectors: [detector] }] };
}

function reportOf(plan: Plan) {
  const [compared] = compareOpinions(checkPlan(plan), recheck(plan), plan.tapeTolerance);
  expect(compared?.detectors[0]?.computed).toMatchObject({ how: 'twice' });
  const level = plan.levels[0] as Level;
  return checkDetector(plan, buildLevel(level), level.detectors[0] as Detector);
}
const sunOf = (plan: Plan) => reportOf(plan).checks.filter(({ rule }) => rule === 'direct-sun');

describe('a window whose sill or head nobody has measured', () => {
  it.each([{ topAnswered: false }, { bottomAnswered: false }, { topAnswered: false, bottomAnswered: false }])(
    'is not known to keep direct sun from a spot: %o',
    (open) => {
      const plan = planAt(FAR, open);
      expect(sunOf(plan)).toMatchObject([{ verdict: 'unknown', notRun: true, measured: null, subject: 'glass' }]);
      expect(openChecks(reportOf(plan)).map(({ rule }) => rule)).toContain('direct-sun');
      expect(headlineOf(reportOf(plan)).word).not.toBe('Clear');
      // Measured, or in a file without those keys: the sun is computed as usual.
      expect(sunOf(planAt(FAR, {}))).toMatchObject([{ verdict: 'clear', notRun: false, subject: 'glass' }]);
      expect(sunOf(planAt(FAR, { topAnswered: true, bottomAnswered: true }))).toEqual(sunOf(planAt(FAR, {})));
    },
  );

  it('blocks what lies in its light by the usual heights too', () => {
    for (const at of [SUNLIT, NEAR]) expect(sunOf(planAt(at, { topAnswered: false }))).toEqual(sunOf(planAt(at, {})));
    expect(sunOf(planAt(NEAR, {}))).toMatchObject([{ verdict: 'blocked' }]);
  });

  it('counts for nothing in a well or behind a cover, or without glass', () => {
    for (const dark of [{ shade: 'well' }, { shade: 'covered' }, { glazed: false }] as const)
      expect(sunOf(planAt(FAR, { topAnswered: false, ...dark }))).toMatchObject([{ verdict: 'clear', notRun: false }]);
  });

  it('may be looked at instead: a word that no sun reaches the spot counts, but not against what is worked out', () => {
    const vouched = { lookedFor: ['direct-sun'] };
    expect(sunOf(planAt(FAR, { topAnswered: false }, vouched))).toMatchObject([{ verdict: 'clear', notRun: false }]);
    expect(sunOf(planAt(NEAR, { topAnswered: false }, vouched))).toMatchObject([{ verdict: 'blocked' }]);
  });
});

describe('direct sun on a thing whose top nobody has measured', () => {
  const { base } = HEIGHTS;
  const table = (change: Partial<PlanObject> = {}): PlanObject => ({
    id: 't',
    name: 'Table',
    shape: { box: { center: [2500, 3000], width: 800, depth: 3000, turn: 0 } },
    bottom: 0,
    top: base,
    topAnswered: false,
    ...change,
  });
  const standing = (at: XY, objects: readonly PlanObject[], change: Partial<Level> = {}): Plan => {
    const plan = planAt(at, {}, { objects, ...change });
    const [level] = plan.levels as [Level];
    return { ...plan, levels: [{ ...level, detectors: level.detectors.map((one) => ({ ...one, support: null })) }] };
  };

  it('is not run: the light falls elsewhere at another height', () => {
    const plan = standing(FAR, [table()]);
    expect(sunOf(plan)).toMatchObject([{ verdict: 'unknown', notRun: true, measured: null, subject: 't' }]);
    expect(describeNotRun(reportOf(plan), plan, plan.levels[0] as Level)).toContain(
      'Direct sun, the table: Nobody has measured how high the thing under it is. Keep out of direct sun.',
    );
    expect(sunOf(standing(FAR, [table({ topAnswered: true })]))).toMatchObject([{ verdict: 'clear', notRun: false }]);
    expect(sunOf(standing(FAR, [table(), table({ id: 't2', topAnswered: true })]))).toMatchObject([
      { verdict: 'clear', notRun: false },
    ]);
  });

  it('still blocks in the light at the usual height, is clear without glass, and may be looked at', () => {
    expect(sunOf(standing(NEAR, [table()]))).toMatchObject([{ verdict: 'blocked', subject: 'glass' }]);
    const plan = standing(FAR, [table()]);
    const [level] = plan.levels as [Level];
    const openings = level.openings.map((one) => ({ ...one, glazed: false }));
    expect(sunOf({ ...plan, levels: [{ ...level, openings }] })).toMatchObject([{ verdict: 'clear' }]);
    expect(sunOf(standing(FAR, [table()], { lookedFor: ['direct-sun'] }))).toMatchObject([{ verdict: 'clear' }]);
  });
});
