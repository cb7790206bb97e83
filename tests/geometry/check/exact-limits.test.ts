import { describe, expect, it } from 'vitest';
import { blockingChecks } from '../../../geometry/check/blocking-checks.ts';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { checkCompanion } from '../../../geometry/check/companion.ts';
import { checkHeight } from '../../../geometry/check/heights.ts';
import {
  compareByMargin,
  compareVerdicts,
  distanceCheck,
  nearestAndNotClear,
  worstVerdict,
} from '../../../geometry/check/measure.ts';
import { nearLimit } from '../../../geometry/check/near-limit.ts';
import { levelsToTest } from '../../../geometry/check/needed-locations.ts';
import { axisDistance, fixtureSubject, objectSubject } from '../../../geometry/check/subjects.ts';
import { standsOn } from '../../../geometry/check/support.ts';
import type { Check, Verdict } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, PlanObject } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';

const HOME = 'home-short-term';
const ILLINOIS = 'illinois-422-130';

const ruleOf = (id: RuleId, profile = HOME) => {
  const found = effectiveRules({ profile, overrides: [] }).find((rule) => rule.id === id);
  if (!found) throw new Error(`${profile} has no rule ${id}`);
  return found;
};
function rowsOf(rule: RuleId, level: Level, detector: Partial<Detector>, profile = HOME, plan: Partial<Plan> = {}) {
  const report = checkDetector(planUnder(profile, [level], plan), buildLevel(level), hallDetector(detector));
  return report.checks.filter((check) => check.rule === rule);
}
const row = (margin: number, subject = 'a', verdict: Verdict = 'clear'): Check => ({
  ...distanceCheck(ruleOf('sump'), subject, 100, 100 + margin, 0),
  verdict,
});

describe('a distance at its limit', () => {
  // A distance that is short by 0.1 mm meets its limit; it is tight while its margin is less than the tape tolerance.
  it.each([
    [-0.100_01, 'blocked'],
    [-0.1, 'tight'],
    [0, 'tight'],
    [25.399, 'tight'],
    [25.4, 'clear'],
  ] as const)('with %s mm to spare is %s', (margin, verdict) => {
    expect(distanceCheck(ruleOf('sump'), 's', 1000, 1000 + margin, 25.4).verdict).toBe(verdict);
    expect(distanceCheck(ruleOf('sump'), 's', 1000, 1000 - margin, 25.4, 'most')).toMatchObject({
      verdict,
      bound: 'most',
    });
  });

  it.each([
    // At least 20 in to the base; at most 72 in to the top.
    [508, 'clear', 508, 'least'],
    [507.85, 'blocked', 508, 'least'],
    [1828.8 - 25, 'clear', 1828.8, 'most'],
    [1828.8 - 24.85, 'blocked', 1828.8, 'most'],
  ] as const)('a base of %s mm is %s', (base, verdict, required, bound) => {
    expect(checkHeight({ base, tall: 25, radius: RADIUS }, ruleOf('height-band'), 0)).toMatchObject([
      { verdict, required, bound },
    ]);
  });

  it('of nothing leaves the size of the detector, where the heights meet', () => {
    const pit = fixtureSubject(fixtureAt('sump-pit', { top: 2000 }));
    const flat = fixtureSubject(fixtureAt('sump-pit'));
    const least = (mm: number) => ({ ...ruleOf('sump'), least: mm });
    const probe = { base: 900, tall: 25, radius: RADIUS };
    expect(axisDistance(least(0.1), pit, probe)).toBeCloseTo(RADIUS - 0.1, 9);
    expect(axisDistance(least(0.1), flat, probe)).toBe(null);
    expect(axisDistance(least(0.2), flat, probe)).toBeCloseTo(RADIUS + 0.1, 9);
  });
});

describe('the order of rows', () => {
  it('is by margin, then by id, whatever the order of the file', () => {
    const rows = [row(7, 'b'), row(3, 'c'), row(7 + 4e-7, 'a'), row(-1, 'd', 'blocked')];
    const order = ['d', 'c', 'a', 'b'];
    expect([...rows].sort(compareByMargin).map(({ subject }) => subject)).toEqual(order);
    expect(
      [...rows]
        .reverse()
        .sort(compareByMargin)
        .map(({ subject }) => subject),
    ).toEqual(order);
    expect(compareByMargin(row(7, 'a'), row(7, 'a'))).toBe(0);
  });

  it('keeps the nearest, and of the others those that are not clear', () => {
    const kept = nearestAndNotClear([row(9, 'b', 'tight'), row(1, 'a'), row(2, 'c'), row(3, 'd', 'blocked')]);
    expect(kept.map(({ subject }) => subject)).toEqual(['a', 'd', 'b']);
  });

  it('of two subjects at one distance that are clear shows the first by its id alone', () => {
    const round = (id: string, y: number) =>
      fixtureAt('sump-pit', { id, shape: { circle: { center: [0, y], radius: 100 } } });
    const level = hall({ fixtures: [round('b', 0), round('a', 8000)] });
    expect(rowsOf('sump', level, { at: [0, 4000] }).map(({ subject }) => subject)).toEqual(['a']);
  });

  it('of verdicts is blocked, unknown, tight, clear, and what is not run lowers none', () => {
    const verdicts: readonly Verdict[] = ['blocked', 'unknown', 'tight', 'clear'];
    expect([...verdicts].reverse().sort(compareVerdicts)).toEqual(verdicts);
    for (const [i, worse] of verdicts.entries()) {
      for (const better of verdicts.slice(i))
        expect(worstVerdict([row(1, 'a', better), row(1, 'b', worse)])).toBe(worse);
    }
    expect(worstVerdict([row(1, 'a', 'tight'), { ...row(1, 'b', 'unknown'), notRun: true }])).toBe('tight');
    expect(worstVerdict([])).toBe('clear');
  });

  it('of what bars a point is the worst first, then by margin', () => {
    const level = hall({
      rooms: [],
      fixtures: [fixtureAt('sump-pit'), fixtureAt('furnace', { id: 'g', top: 100 })],
    });
    const plan = planUnder(HOME, [level]);
    const checks = blockingChecks(plan, buildLevel(level), { base: 900, tall: 25, radius: RADIUS }, [300, 5000]);
    expect(checks.map(({ rule, verdict }) => [rule, verdict])).toEqual([
      ['sump', 'blocked'],
      ['heat', 'blocked'],
      ['room-use', 'unknown'],
    ]);
  });

  it('of the lengths to tape is the smallest margin first, one of each rule', () => {
    const near = (rule: RuleId, margin: number, verdict: Verdict = 'clear'): Check => ({
      ...row(margin, `${rule} ${margin}`, verdict),
      rule,
      witness: { rim: [0, 0], subject: [1, 1] },
    });
    const checks = [
      near('sump', 49),
      near('heat', 30),
      near('sump', 40),
      near('outside-wall', 50),
      near('floor-drain', 90, 'tight'),
      { ...near('object', 1), witness: null },
    ];
    const shown = nearLimit({ id: 'd', verdict: 'clear', room: null, checks });
    expect(shown.map(({ subject }) => subject)).toEqual(['heat 30', 'sump 40', 'floor-drain 90']);
    expect(nearLimit({ id: 'd', verdict: 'clear', room: null, checks: [near('sump', 500)] }).length).toBe(1);
  });
});

describe('machines that must be off (Illinois: within 20 ft)', () => {
  const WITHIN = 6096;
  const fan = (id: string, x: number, kind: 'dehumidifier' | 'window-air-conditioner' = 'dehumidifier') =>
    fixtureAt(kind, { id, shape: { circle: { center: [x, 5000], radius: 100 } } });
  const said = (...states: readonly Plan['conditions'][number]['state'][]): Partial<Plan> => ({
    conditions: states.map((state) => ({ item: 'room-machines-off', state, at: null, note: '' })),
  });
  const rows = (x: number, plan: Partial<Plan> = {}, more: Level['fixtures'] = []) =>
    rowsOf('running-machine', hall({ fixtures: [fan('f', x), ...more] }), {}, ILLINOIS, plan);

  it.each([
    ['at the distance', WITHIN + 150, 0],
    ['a hair nearer', WITHIN + 150 - 1e-3, 1],
    ['far away', 9000, 0],
  ])('%s', (_, x, count) => {
    expect(rows(x).length).toBe(count);
  });

  it('are not run until it is recorded that they were off', () => {
    const open = {
      subject: 'f',
      verdict: 'unknown',
      notRun: true,
      required: WITHIN,
      reason: 'It must be off during the exposure.',
    };
    expect(rows(1150)).toMatchObject([{ ...open, measured: 1000, margin: 1000 - WITHIN }]);
    expect(rows(1150, said('kept', 'broken'))).toMatchObject([open]);
    expect(rows(1150, said('unknown'))).toMatchObject([open]);
    const off = { subject: 'f', verdict: 'clear', notRun: false, measured: null };
    expect(rows(1150, said('kept', 'kept'))).toMatchObject([
      { ...off, reason: 'By the answer under House it was off.' },
    ]);
  });

  it('with a window unit it is asked whether it only recirculated', () => {
    const level = hall({ fixtures: [fan('f', 1150, 'window-air-conditioner')] });
    const answered = (item: string): Partial<Plan> => ({ conditions: [{ item, state: 'kept', at: null, note: '' }] });
    const row = (item: string) => rowsOf('running-machine', level, {}, ILLINOIS, answered(item));
    expect(row('room-machines-off')).toMatchObject([{ verdict: 'unknown' }]);
    expect(row('window-air-conditioner-recirculating')).toMatchObject([
      { verdict: 'clear', reason: 'By the answer under House it only recirculated.' },
    ]);
  });

  it('are listed with the nearest first; under the rim it measures nothing', () => {
    expect(rows(3000, {}, [fan('g', 1000), fan('h', 0)]).map(({ subject, measured }) => [subject, measured])).toEqual([
      ['h', 0],
      ['g', 850],
      ['f', 2850],
    ]);
  });
});

describe('a pair', () => {
  const model = buildLevel(hall());
  const [room = null] = model.rooms;
  const rowsAt = (at: number, change: Partial<Detector> = {}) => {
    const one = hallDetector({ pair: 'A' });
    const two = hallDetector({ id: 'e', pair: 'A', at: [at, 5000], ...change });
    return checkCompanion(model, one, room, ruleOf('companion'), 0, [one, two]);
  };

  it.each([
    // 4 to 8 in from rim to rim.
    [101.6, 'clear', 'least'],
    [101.45, 'blocked', 'least'],
    [203.2, 'clear', 'most'],
    [203.35, 'blocked', 'most'],
    [-20, 'blocked', 'least'],
  ] as const)('%s mm apart is %s', (apart, verdict, bound) => {
    const measured = Math.max(0, apart); // overlapping rims are 0 apart
    const [row] = rowsAt(apart + 2 * RADIUS);
    expect(row).toMatchObject({ verdict, bound, subject: 'e' });
    expect(row?.measured).toBeCloseTo(measured, 9);
  });

  it.each([
    [102.1, 'clear'],
    [102.11, 'blocked'],
    [-102.1, 'clear'],
    [-102.11, 'blocked'],
  ] as const)('with bases %s mm apart is %s', (higher, verdict) => {
    expect(rowsAt(150 + 2 * RADIUS, { base: 900 + higher })).toMatchObject([{ verdict }]);
  });

  it('that is apart cites what asks for one room and one height', () => {
    const [together] = rowsAt(150 + 2 * RADIUS, { base: 1200 });
    const [distance] = rowsAt(150 + 2 * RADIUS);
    expect(together?.sources.every(({ of }) => of?.includes('together'))).toBe(true);
    expect(distance?.sources.some(({ of }) => of?.includes('together'))).toBe(false);
  });
});

describe('what is drawn and does not count, or counts in another way', () => {
  it('an inside passage is no opening to keep away from; under a list that counts inside doors neither', () => {
    const walls = [
      ...hall().walls,
      { id: 'p', from: [0, -10_100], to: [0, 10_100], thickness: 100, side: 'auto' } as const,
    ];
    const opening = (kind: 'door' | 'passage') =>
      ({ id: 'i', wall: 'p', kind, offset: 14_600, width: 1000, bottom: 0, top: 2000 }) as const;
    const rooms = [{ id: 'r', name: '', use: 'den', at: [500, 0] }] as const;
    const subjects = (kind: 'door' | 'passage') =>
      rowsOf(
        'outside-opening',
        hall({ walls, rooms, openings: [...hall().openings, opening(kind)] }),
        { at: [500, 5000] },
        'pennsylvania-240-310',
      ).map(({ subject }) => subject);
    expect(subjects('passage')).not.toContain('i');
  });

  it('what hangs or stands by itself says so', () => {
    expect(rowsOf('support', hall(), { support: 'hung' })).toMatchObject([{ verdict: 'clear', reason: 'It hangs.' }]);
    expect(rowsOf('support', hall(), { support: 'stand' })).toMatchObject([
      { verdict: 'clear', reason: 'It stands on its own stand.' },
    ]);
  });

  it.each([
    [{ top: 900 }, null, true],
    [{ top: 903 }, null, true],
    [{ top: 903.01 }, null, false],
    [{ top: 897 }, null, true],
    [{ top: 900 }, 'hung', false],
    [{ top: 900 }, 'stand', false],
  ] as const)('a table %o under a detector with support %s: %s', (size, support, expected) => {
    const shape = { box: { center: [0, 5000], width: 600, depth: 600, turn: 0 } } as const;
    const table: PlanObject = { id: 't', name: '', shape, bottom: 0, ...size };
    expect(standsOn(hallDetector({ support }), table)).toBe(expected);
    expect(objectSubject(table).solid).toBe(true);
  });

  it('a mark on the floor carries nothing, however low the detector stands', () => {
    const shape = { box: { center: [0, 5000], width: 600, depth: 600, turn: 0 } } as const;
    const mat = (top: number): PlanObject => ({ id: 't', name: '', shape, bottom: 0, top });
    expect(standsOn(hallDetector({ base: 1 }), mat(0))).toBe(false);
    expect(standsOn(hallDetector({ base: 1 }), mat(0.5))).toBe(true);
  });

  it('a rule without a figure leaves what is nearest open, in words', () => {
    const level = hall({ fixtures: [fixtureAt('washer')] });
    const open = ['pennsylvania-240-310', ILLINOIS, 'ohio-3701-69-07', 'health-canada-long-term'].flatMap((profile) =>
      effectiveRules({ profile, overrides: [] })
        .filter(
          ({ least, subject }) =>
            least === null && ['fixture', 'opening', 'outside-wall', 'object'].includes(subject.of),
        )
        .flatMap(({ id }) => rowsOf(id, level, { at: [3000, 5000] }, profile)),
    );
    for (const { verdict, notRun, reason } of open.filter(({ subject }) => subject !== null))
      expect([verdict, notRun, reason]).toEqual([
        'unknown',
        true,
        expect.stringMatching(/^The published text gives no figure/),
      ]);
  });

  it('only the levels to test need locations', () => {
    const [low, high] = [hall(), { ...hall(), id: 'U', order: 1 }];
    expect(levelsToTest(planUnder(HOME, [low, high])).map(({ level, needed }) => [level.id, needed > 0])).toEqual([
      ['L', true],
    ]);
  });

  it('a rule that was looked for names what is not there', () => {
    expect(rowsOf('sump', hall({ lookedFor: ['sump'] }), {})).toMatchObject([
      { verdict: 'clear', reason: expect.stringMatching(/^Looked for on this level: no sump/) },
    ]);
  });
});
