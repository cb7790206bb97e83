import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { compareProfiles } from '../../../geometry/check/compare-profiles.ts';
import { openChecks } from '../../../geometry/check/looked-for.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeOpenRules } from '../../../geometry/messages/index.ts';
import type { Detector, FixtureKind, Level, RoomUse } from '../../../geometry/plan/model.ts';
import type { ConditionState } from '../../../geometry/plan/test-record.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { PROFILES, profileById } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';

/*
 * Four published lists, typed in by hand from the texts: Pennsylvania 25 Pa. Code 240.310 (2018), Illinois 32 Ill. Adm. Code
 * 422.130, Ohio Adm. Code 3701-69-07 Appendix A (2012), all three read in the primary text for placement; Health Canada's
 * homes guide (older text) from secondary pages. `null` = the text names no figure or does not name the thing at all.
 */
const PA = 'pennsylvania-240-310';
const IL = 'illinois-422-130';
const OH = 'ohio-3701-69-07';
const HC = 'health-canada-long-term';

const FEET = 304.8;
const INCHES = 25.4;

const FIGURES: { rule: RuleId; limit: 'least' | 'most'; what: string; mm: Record<string, number | null> }[] = [
  {
    rule: 'height-band',
    limit: 'least',
    what: '20 in; Canada 0.8 m',
    mm: { [PA]: 508, [IL]: 508, [OH]: 508, [HC]: 800 },
  },
  {
    rule: 'height-band',
    limit: 'most',
    what: '6 ft; Canada 2.0 m',
    mm: { [PA]: 6 * FEET, [IL]: 6 * FEET, [OH]: 6 * FEET, [HC]: 2000 },
  },
  {
    rule: 'ceiling',
    limit: 'least',
    what: '1 ft, Ill. for hung ones, Ohio not seen; Canada 50 cm',
    mm: { [PA]: FEET, [IL]: FEET, [OH]: null, [HC]: 500 },
  },
  {
    rule: 'outside-opening',
    limit: 'least',
    what: '3 ft; Canada "away from"',
    mm: { [PA]: 3 * FEET, [IL]: 3 * FEET, [OH]: 3 * FEET, [HC]: null },
  },
  {
    rule: 'outside-wall',
    limit: 'least',
    what: '1 ft; Canada about 50 cm',
    mm: { [PA]: FEET, [IL]: FEET, [OH]: FEET, [HC]: 500 },
  },
  {
    rule: 'inside-wall',
    limit: 'least',
    what: 'Canada 40 cm only',
    mm: { [PA]: null, [IL]: null, [OH]: null, [HC]: 400 },
  },
  {
    rule: 'moving-air',
    limit: 'least',
    what: '3 ft from ducts; Canada "away from"',
    mm: { [PA]: 3 * FEET, [IL]: 3 * FEET, [OH]: 3 * FEET, [HC]: null },
  },
  {
    rule: 'running-machine',
    limit: 'least',
    what: 'Ill. off within 20 ft',
    mm: { [PA]: null, [IL]: 20 * FEET, [OH]: null, [HC]: null },
  },
  {
    rule: 'heat',
    limit: 'least',
    what: '4 ft; Canada "away from"',
    mm: { [PA]: 4 * FEET, [IL]: 4 * FEET, [OH]: 4 * FEET, [HC]: null },
  },
  {
    rule: 'direct-sun',
    limit: 'least',
    what: 'Pa. 4 ft, else out of it',
    mm: { [PA]: 4 * FEET, [IL]: 0, [OH]: 0, [HC]: 0 },
  },
  {
    rule: 'sump',
    limit: 'least',
    what: '7 ft, Ohio 10 ft',
    mm: { [PA]: 7 * FEET, [IL]: 7 * FEET, [OH]: 10 * FEET, [HC]: null },
  },
  {
    rule: 'floor-drain',
    limit: 'least',
    what: 'in none of the texts',
    mm: { [PA]: null, [IL]: null, [OH]: null, [HC]: null },
  },
  {
    rule: 'washer-dryer',
    limit: 'least',
    what: 'Pa. 10 ft',
    mm: { [PA]: 10 * FEET, [IL]: null, [OH]: null, [HC]: null },
  },
  {
    rule: 'object',
    limit: 'least',
    what: '4 in; Canada 20 cm',
    mm: { [PA]: 4 * INCHES, [IL]: 4 * INCHES, [OH]: 4 * INCHES, [HC]: 200 },
  },
  {
    rule: 'companion',
    limit: 'least',
    what: 'Ill. 4 in (copy)',
    mm: { [PA]: null, [IL]: 4 * INCHES, [OH]: null, [HC]: null },
  },
  {
    rule: 'companion',
    limit: 'most',
    what: 'Ill. 5 in (copy)',
    mm: { [PA]: null, [IL]: 5 * INCHES, [OH]: null, [HC]: null },
  },
];

describe('the figures of the published lists', () => {
  const cases = FIGURES.flatMap(({ rule, limit, what, mm }) =>
    Object.entries(mm).map(([profile, value]) => ({ profile, rule, limit, what, value })),
  );
  it.each(cases)('$profile, $rule, $limit: $value mm ($what)', ({ profile, rule, limit, value }) => {
    const row = profileById(profile)?.rules.find(({ id }) => id === rule);
    if (value === null) expect(row?.[limit] ?? null).toBeNull();
    else expect(row?.[limit]).toBeCloseTo(value, 9);
  });

  it('leaves no figure of a list unnamed in the table above', () => {
    const named = new Set(
      cases.filter(({ value }) => value !== null).map(({ profile, rule, limit }) => `${profile} ${rule} ${limit}`),
    );
    const held = PROFILES.filter(({ id }) => id !== 'home-short-term').flatMap(({ id, rules }) =>
      rules.flatMap((row) => [
        ...(row.least === null ? [] : [`${id} ${row.id} least`]),
        ...(row.most === null ? [] : [`${id} ${row.id} most`]),
      ]),
    );
    expect(held.filter((figure) => !named.has(figure))).toEqual([]);
  });

  it('marks what was not read in the primary text: all of Canada, the pair and the 20 ft of Illinois', () => {
    const secondary = PROFILES.filter(({ id }) => id !== 'home-short-term').flatMap(({ id, rules }) =>
      rules.filter(({ sources }) => sources.every(({ mark }) => mark === 'secondary')).map((row) => `${id} ${row.id}`),
    );
    const canada =
      profileById(HC)?.rules.flatMap(({ id }) => (['support', 'room-use'].includes(id) ? [] : [`${HC} ${id}`])) ?? [];
    expect(secondary).toEqual([`${IL} running-machine`, `${IL} companion`, ...canada]);
  });
});

function checksOf(profile: string, level: Level, detector: Detector, rule: RuleId) {
  return checkDetector(planUnder(profile, [level]), buildLevel(level), detector).checks.filter(
    (check) => check.rule === rule,
  );
}

describe('what the lists see differently', () => {
  const inner = {
    id: 'inner',
    from: [3000, -10100],
    to: [3000, 10100],
    thickness: 100,
    side: 'auto',
  } as const;
  const divided = (kind: 'door' | 'window'): Level => {
    const base = hall();
    return {
      ...base,
      walls: [...base.walls, inner],
      openings: [{ id: 'i', wall: 'inner', kind, offset: 14700, width: 800, bottom: 0, top: 2000 }],
      rooms: [...base.rooms, { id: 'r2', name: '', use: 'den', at: [6000, 0] }],
    };
  };
  const beside = hallDetector({ at: [2950 - RADIUS - 600, 5000] });

  it.each([
    { kind: 'door', profile: PA, blocked: false },
    { kind: 'door', profile: IL, blocked: false },
    { kind: 'door', profile: OH, blocked: true },
    { kind: 'window', profile: PA, blocked: true },
    { kind: 'window', profile: IL, blocked: false },
    { kind: 'window', profile: OH, blocked: false },
  ] as const)(
    'a $kind in an interior wall, 600 mm away, under $profile: blocked $blocked',
    ({ kind, profile, blocked }) => {
      const checks = checksOf(profile, divided(kind), beside, 'outside-opening');
      expect(checks.some(({ verdict }) => verdict === 'blocked')).toBe(blocked);
    },
  );

  it.each([
    { profile: PA, verdict: 'blocked' },
    { profile: IL, verdict: undefined },
    { profile: OH, verdict: undefined },
  ])('a washer 9 ft away under $profile', ({ profile, verdict }) => {
    const level = hall({ fixtures: [fixtureAt('washer')] });
    const [check] = checksOf(profile, level, hallDetector({ at: [9 * FEET + RADIUS, 5000] }), 'washer-dryer');
    expect(check?.verdict).toBe(verdict);
  });

  it('a sump 8 ft away is clear in Pennsylvania and Illinois and blocked in Ohio', () => {
    const level = hall({ fixtures: [fixtureAt('sump-pit')] });
    const detector = hallDetector({ at: [8 * FEET + RADIUS, 5000] });
    expect([PA, IL, OH].map((profile) => checksOf(profile, level, detector, 'sump')[0]?.verdict)).toEqual([
      'clear',
      'clear',
      'blocked',
    ]);
  });

  it('Illinois: a dehumidifier 19 ft away has to be off, said beside the verdict, one 21 ft away not', () => {
    const level = hall({
      fixtures: [fixtureAt('dehumidifier', { stream: { direction: 180, spread: 30, reach: 900 } })],
    });
    const at = (feet: number) => hallDetector({ at: [feet * FEET + RADIUS, 5000] });
    expect(checksOf(IL, level, at(19), 'running-machine')).toMatchObject([
      { subject: 'f', notRun: true, verdict: 'unknown' },
    ]);
    expect(checksOf(IL, level, at(21), 'running-machine')).toEqual([]);
    expect(checkDetector(planUnder(IL, [level]), buildLevel(level), at(19)).verdict).toBe('clear');
  });

  it('what is drawn near a rule without a figure was looked for: it is not run, and never "not looked for"', () => {
    const level = hall({ fixtures: [fixtureAt('furnace')] });
    const plan = planUnder(HC, [level]);
    const report = checkDetector(plan, buildLevel(level), hallDetector({ at: [12 * FEET, 5000], base: 1000 }));
    expect(describeOpenRules(report, plan)).toMatch(/Not run: .*heat/);
    expect(describeOpenRules(report, plan)).not.toMatch(/Not looked for: [^.]*heat/);
  });

  it('Illinois: what the answer under House says was off is settled, its undrawn stream too; broken or open it is not', () => {
    const level = hall({ fixtures: [fixtureAt('dehumidifier')] });
    const detector = hallDetector({ at: [10 * FEET + RADIUS, 5000] });
    const open = (state: ConditionState | null) => {
      const conditions = state ? [{ item: 'room-machines-off', state, at: null, note: '' }] : [];
      const plan = { ...planUnder(IL, [level]), conditions };
      const report = checkDetector(plan, buildLevel(level), detector);
      const agreed = compareOpinions(
        { levels: [{ id: level.id, detectors: [report] }] },
        recheck({ ...plan, levels: [{ ...level, detectors: [detector] }] }),
      );
      expect(agreed[0]?.detectors[0]?.computed.how).toBe('twice');
      return openChecks(report)
        .filter(({ subject }) => subject === 'f')
        .map(({ rule }) => rule);
    };
    expect(open(null)).toEqual(['moving-air', 'running-machine']);
    expect(open('broken')).toEqual(['moving-air', 'running-machine']);
    expect(open('kept')).toEqual([]);
  });

  it('a portable fan 1 ft away blocks only where its stream is drawn and reaches the detector; undrawn it is not run', () => {
    const detector = hallDetector({ at: [FEET + RADIUS, 5000] });
    const fan = (direction: number | null) =>
      hall({
        fixtures: [
          fixtureAt('portable-fan', { stream: direction === null ? null : { direction, spread: 40, reach: 3000 } }),
        ],
      });
    expect(checksOf(PA, fan(0), detector, 'moving-air')).toMatchObject([{ verdict: 'blocked' }]);
    expect(checksOf(PA, fan(180), detector, 'moving-air')).toMatchObject([{ verdict: 'clear' }]);
    expect(checksOf(PA, fan(null), detector, 'moving-air')).toMatchObject([
      { verdict: 'unknown', notRun: true, subject: 'f' },
    ]);
  });

  it('Canada: a furnace is named without a figure, which is not run and never a pass', () => {
    const level = hall({ fixtures: [fixtureAt('furnace')] });
    expect(checksOf(HC, level, hallDetector({ at: [5000, 5000] }), 'heat')).toMatchObject([
      { subject: 'f', verdict: 'unknown', notRun: true, measured: null },
    ]);
  });

  it('Canada: 40 cm from an interior wall', () => {
    const level = divided('door');
    const at = (away: number) => hallDetector({ at: [2950 - RADIUS - away, -5000] });
    expect(checksOf(HC, level, at(399), 'inside-wall')[0]?.verdict).toBe('blocked');
    expect(checksOf(HC, level, at(400), 'inside-wall')[0]?.verdict).toBe('tight');
  });

  it('the three states name interior walls nowhere: the object rule leaves them out', () => {
    const level = divided('door');
    const close = hallDetector({ at: [2950 - RADIUS - 10, -5000] });
    expect([PA, IL, OH].flatMap((profile) => checksOf(profile, level, close, 'object'))).toEqual([]);
  });
});

describe('rooms that the lists bar', () => {
  // Common practice, no published source: barred under every profile where its list is silent.
  const OURS: RoomUse[] = ['closet', 'crawlspace', 'garage', 'stair', 'hall'];
  const BARRED: Record<string, RoomUse[]> = {
    [PA]: ['kitchen', 'bathroom', 'spa', 'closet', 'crawlspace', ...OURS],
    [IL]: [
      'kitchen',
      'bathroom',
      'laundry',
      'spa',
      'closet',
      'storage',
      'crawlspace',
      'utility',
      'stair',
      'hall',
      'garage',
    ],
    [OH]: ['kitchen', 'bathroom', 'laundry', 'spa', 'storage', 'utility', ...OURS],
    [HC]: ['kitchen', 'bathroom', 'laundry', ...OURS],
  };
  const cases = Object.entries(BARRED).flatMap(([profile, barred]) =>
    (
      [
        'den',
        'kitchen',
        'bathroom',
        'laundry',
        'spa',
        'closet',
        'storage',
        'crawlspace',
        'utility',
        'stair',
        'hall',
        'garage',
      ] as const
    ).map((use) => ({ profile, use, verdict: barred.includes(use) ? 'blocked' : 'clear' })),
  );
  it.each(cases)('$profile: $use is $verdict', ({ profile, use, verdict }) => {
    const level = hall({ rooms: [{ id: 'r', name: '', use, at: [0, 0] }] });
    expect(checksOf(profile, level, hallDetector(), 'room-use')[0]?.verdict).toBe(verdict);
  });
});

describe('where a room is barred from', () => {
  const sourcesOf = (profile: string, use: RoomUse) => {
    const level = hall({ rooms: [{ id: 'r', name: '', use, at: [0, 0] }] });
    const [row] = checksOf(profile, level, hallDetector(), 'room-use');
    return row?.sources.map(({ mark }) => mark);
  };
  it.each<[string, RoomUse, string[]]>([
    [PA, 'closet', ['primary']],
    [PA, 'hall', ['common-practice']],
    [IL, 'kitchen', ['primary']],
    [IL, 'storage', ['our-reading']],
    [IL, 'stair', ['common-practice']],
    // Ohio Adm. Code 3701-69-07 App. A, A.1.a names regularly occupied rooms, as 32 Ill. Adm. Code 422.130(a)(1)(A) does.
    [OH, 'storage', ['our-reading']],
    [OH, 'crawlspace', ['common-practice']],
    [HC, 'closet', ['secondary']],
    [HC, 'garage', ['common-practice']],
    ['home-short-term', 'hall', ['secondary']],
    ['home-short-term', 'storage', ['common-practice']],
    ['home-short-term', 'laundry', ['primary']],
  ])('%s, %s: %s', (profile, use, marks) => {
    expect(sourcesOf(profile, use)).toEqual(marks);
  });

  it('Illinois bars rooms in (a)(1)(B); Appendix B of Part 422 is named as what it is', () => {
    const rules = profileById(IL)?.rules ?? [];
    const cites = (id: RuleId) => rules.find((row) => row.id === id)?.sources.map(({ cite }) => cite);
    expect(cites('room-use')).toContain('32 Ill. Adm. Code 422.130(a)(1)(B)');
    expect(cites('level')).toContain('32 Ill. Adm. Code Part 422, Appendix B');
  });
});

describe('compareProfiles', () => {
  it('gives a report of every profile as published, without the overrides of the plan', () => {
    const kind: FixtureKind = 'sump-pit';
    const level = hall({ fixtures: [fixtureAt(kind)] });
    const plan = planUnder('home-short-term', [level], {
      protocol: { profile: 'home-short-term', overrides: [{ rule: 'sump', distance: 0, note: 'sealed' }] },
    });
    const detector = hallDetector({ at: [8 * FEET + RADIUS, 5000] });
    const verdicts = compareProfiles(plan, buildLevel(level), detector).map(({ profile, report }) => [
      profile.id,
      report.verdict,
    ]);
    expect(verdicts).toEqual([
      ['home-short-term', 'clear'],
      [PA, 'clear'],
      [IL, 'clear'],
      [OH, 'blocked'],
      [HC, 'clear'],
    ]);
    const near = hallDetector({ at: [5 * FEET + RADIUS, 5000] });
    expect(compareProfiles(plan, buildLevel(level), near)[0]?.report.verdict).toBe('blocked');
  });
});
