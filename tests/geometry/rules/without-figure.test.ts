import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { changeWord, insteadOf, overrideWord } from '../../../geometry/messages/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { nearestSpot } from '../../../geometry/region/nearest.ts';
import { isOverridable, PROFILES } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';

/* Health Canada requires a place away from doors, windows, heat and drafts, without a figure (homes guide, older text, secondary pages). */
const HC = 'health-canada-long-term';
const METER = 1000;

/** Returns a furnace with its edge at x = 0, and a detector `gap` mm from it. */
const setup = (gap: number, distance: number | null) => {
  const level = hall({ fixtures: [fixtureAt('furnace')], openings: [] });
  const overrides = distance === null ? [] : [{ rule: 'heat', distance, note: 'set on site' }];
  const plan: Plan = planUnder(HC, [level], { protocol: { profile: HC, overrides } });
  const detector = hallDetector({ at: [gap + RADIUS, 5000] });
  const report = checkDetector(plan, buildLevel(level), detector);
  return { level, plan, detector, report, heat: report.checks.filter(({ rule }) => rule === 'heat') };
};

describe('a rule whose published text gives no figure', () => {
  it('is not run, and says where the distance is entered', () => {
    const [row] = setup(1500, null).heat;
    expect(row).toMatchObject({ verdict: 'unknown', notRun: true, subject: 'f', override: null });
    expect(row?.reason).toContain('Enter that distance under Property');
  });

  it.each([
    [999.8, 'blocked'],
    [1000, 'tight'],
    [1500, 'clear'],
  ] as const)('runs with the distance of the plan, 1 m: %d mm is %s', (gap, verdict) => {
    const { plan, level, detector, report, heat } = setup(gap, METER);
    expect(heat).toMatchObject([{ verdict, required: METER, override: { published: null, loosened: false } }]);
    // The second computation and the region give the same result.
    const second = recheck({ ...plan, levels: [{ ...level, detectors: [detector] }] });
    const [same] = compareOpinions({ levels: [{ id: level.id, detectors: [report] }] }, second);
    expect(same?.detectors[0]?.computed.how).toBe('twice');
    const nearest = nearestSpot(levelRegion(plan, buildLevel(level), detector), detector.at);
    expect(nearest?.distance === 0).toBe(verdict !== 'blocked');
  });

  it.each<{ rule: RuleId; change: Partial<Level> }>([
    { rule: 'outside-opening', change: {} },
    { rule: 'moving-air', change: { fixtures: [fixtureAt('supply-register')] } },
    { rule: 'heat', change: { fixtures: [fixtureAt('furnace')] } },
  ])('$rule: at seven places the two computations and the region come to the same', ({ rule, change }) => {
    const overrides = [{ rule, distance: METER, note: 'set on site' }];
    const verdicts = new Set<string>();
    for (const gap of [500, 950, 999.8, 1000, 1010, 1500, 4000]) {
      const detector = hallDetector({
        at: rule === 'outside-opening' ? [0, gap + RADIUS - 10_000] : [gap + RADIUS, 5000],
      });
      const level = hall({ ...change, detectors: [detector] });
      const plan = planUnder(HC, [level], { protocol: { profile: HC, overrides } });
      const report = checkDetector(plan, buildLevel(level), detector);
      for (const check of report.checks) if (check.rule === rule && check.subject) verdicts.add(check.verdict);
      const [same] = compareOpinions({ levels: [{ id: level.id, detectors: [report] }] }, recheck(plan));
      expect(same?.detectors[0]?.computed.how, `${gap}`).toBe('twice');
      const nearest = nearestSpot(levelRegion(plan, buildLevel(level), detector), detector.at);
      expect(nearest?.distance === 0, `${gap}`).toBe(report.verdict !== 'blocked');
    }
    expect(verdicts).toEqual(new Set(['blocked', 'tight', 'clear']));
  });

  it('needs a note of who set the distance, or a rule that nobody checked would be clear; it is kept on a round trip', () => {
    const { plan } = setup(1500, METER);
    expect(parsePlan(writePlan(plan))).toMatchObject({ ok: true, plan: { protocol: plan.protocol } });
    const bare = { ...plan, protocol: { profile: HC, overrides: [{ rule: 'heat', distance: 1000, note: ' ' }] } };
    const read = parsePlan(writePlan(bare));
    expect(read.ok ? [] : read.problems.map(({ pointer, message }) => [pointer, message])).toEqual([
      ['/protocol/overrides/0/note', expect.stringContaining('without a note. Enter who set it in the note.')],
    ]);
  });

  it('is one to which a distance is measured: never the room, the level, what carries it, the pair', () => {
    const open = PROFILES.flatMap(({ rules }) => rules.filter((rule) => isOverridable(rule) && rule.least === null));
    expect(new Set(open.map(({ subject }) => subject.of))).toEqual(new Set(['opening', 'fixture']));
  });

  it('is told as what it is', () => {
    const own = { published: null, loosened: false, note: '' };
    expect(overrideWord(METER, own)).toBe('No published figure');
    expect(changeWord(METER, own)).toBe('Own distance');
    expect(changeWord(METER, { ...own, published: 500 })).toBe('Tightened');
    expect(changeWord(METER, { ...own, published: METER })).toBe('');
    expect(changeWord(METER, { ...own, published: 5000, loosened: true })).toBe('LOOSENED');
    expect(changeWord(METER, null)).toBe('');
    expect(insteadOf(METER, own, 'metric')).toBe('1.00 m, where the published text gives no figure');
    expect(overrideWord(METER, { ...own, published: 500 })).toBe('Stricter than published');
    expect(overrideWord(500, { ...own, published: 500 })).toBe('As published');
    expect(overrideWord(400, { published: 500, loosened: true, note: 'x' })).toBe('Looser than published');
    expect(insteadOf(METER, { ...own, published: 500 }, 'metric')).toMatch(/ instead of the published /);
  });
});
