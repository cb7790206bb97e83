import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { lookedForQuestions, openChecks, openQuestions } from '../../../geometry/check/looked-for.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { headlineOf } from '../../../geometry/messages/index.ts';
import type { Detector, FixtureKind, Level, Plan } from '../../../geometry/plan/model.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder } from '../../helpers/hall.ts';

/* `lookedFor` in geometry/planfile/README.md: a rule without drawn subjects that nobody looked for is not run. */
const HOME = 'home-short-term';

function reportOf(level: Level, change: Partial<Detector> = {}, profile = HOME, plan: Partial<Plan> = {}) {
  return checkDetector(planUnder(profile, [level], plan), buildLevel(level), hallDetector(change));
}
const rowsOf = (rule: RuleId, level: Level, profile = HOME, plan: Partial<Plan> = {}) =>
  reportOf(level, {}, profile, plan).checks.filter((check) => check.rule === rule);

const bare = (lookedFor?: string[]) => hall({ openings: [], ...(lookedFor && { lookedFor }) });

describe('a rule of which nothing is drawn', () => {
  const cases = PROFILES.flatMap(({ id, rules }) =>
    rules
      .filter((row) => ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain'].includes(row.id))
      .map((row) => ({ profile: id, rule: row.id, least: row.least })),
  );
  it.each(cases)('$profile, $rule: not run until it was looked for, then clear', ({ profile, rule, least }) => {
    const row = { subject: null, required: least, measured: null, margin: null };
    expect(rowsOf(rule, bare(), profile)).toMatchObject([{ ...row, verdict: 'unknown', notRun: true }]);
    expect(rowsOf(rule, bare([rule]), profile)).toMatchObject([{ ...row, verdict: 'clear', notRun: false }]);
    expect(rowsOf(rule, bare(['object']), profile)).toMatchObject([{ notRun: true }]);
    expect(rowsOf(rule, bare(), profile)[0]?.reason).toContain('nobody has recorded that there is none');
  });

  it.each<[RuleId, FixtureKind]>([
    ['moving-air', 'supply-register'],
    ['heat', 'furnace'],
    ['sump', 'sump-pit'],
    ['floor-drain', 'floor-drain'],
  ])('%s: what is drawn is measured, whatever was said to be looked for', (rule, kind) => {
    const level = { ...bare([rule]), fixtures: [fixtureAt(kind, { top: 100 })] };
    expect(rowsOf(rule, level)).toMatchObject([{ subject: 'f', verdict: 'blocked', measured: 0 }]);
  });

  it('does not lower the verdict, and no report of it is called clear by the bare word', () => {
    const report = reportOf(bare());
    expect(report.verdict).toBe('clear');
    expect(headlineOf(report)).toEqual({
      kind: 'open',
      verdict: 'clear',
      open: ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain', 'support'],
      word: 'Clear of what is drawn',
    });
  });

  it('other rules have no such row: no washer is drawn, none is asked for', () => {
    expect(rowsOf('washer-dryer', bare(['washer-dryer']))).toEqual([]);
  });
});

describe('direct sun', () => {
  const known: Partial<Plan> = {
    site: { ...planUnder(HOME, []).site, latitude: 41.2, longitude: -75.9 },
    visit: { closedSince: null, mitigationOnSince: null, start: '2026-03-07T18:00:00Z', end: '2026-03-09T18:00:00Z' },
  };
  it('with an opening drawn it is not run, and says what is missing', () => {
    const [row] = rowsOf('direct-sun', hall());
    expect(row).toMatchObject({ verdict: 'unknown', notRun: true });
    expect(row?.reason).toContain('The location of the house and the times of the test are not given.');
    const [both] = rowsOf('direct-sun', hall(), HOME, known);
    expect(both).toMatchObject({ verdict: 'clear', notRun: false, measured: null });
  });

  it('is clear where a person vouches for it', () => {
    expect(rowsOf('direct-sun', hall({ lookedFor: ['direct-sun'] }))).toMatchObject([
      { verdict: 'clear', notRun: false, measured: null },
    ]);
  });

  it('with no opening drawn it is clear: whether there is none is asked under openings', () => {
    expect(rowsOf('direct-sun', bare())).toMatchObject([{ verdict: 'clear', measured: null }]);
    expect(rowsOf('outside-opening', bare())).toMatchObject([{ verdict: 'unknown', notRun: true }]);
    expect(rowsOf('direct-sun', bare(['outside-opening']))).toMatchObject([{ verdict: 'clear', measured: null }]);
  });

  it('an exterior passage lets the sun in', () => {
    const level = hall({ lookedFor: ['outside-opening'] });
    const passage = level.openings.map((one) => ({ ...one, kind: 'passage' as const }));
    expect(rowsOf('direct-sun', { ...level, openings: passage })).toMatchObject([{ notRun: true }]);
  });
});

describe('what a report leaves open', () => {
  const ALL = ['outside-opening', 'moving-air', 'heat', 'direct-sun', 'sump', 'floor-drain'];

  it('the questions that can be answered are those of the rule table', () => {
    expect(lookedForQuestions(planUnder(HOME, []).protocol).map(({ rule }) => rule)).toEqual(ALL);
    const ohio = planUnder('ohio-3701-69-07', []).protocol;
    expect(lookedForQuestions(ohio).map(({ rule }) => rule)).toEqual(ALL.filter((rule) => rule !== 'floor-drain'));
  });

  it('answered one by one they go, and the last leaves the bare word', () => {
    const left = ALL.map((_, count) => {
      const level = bare(ALL.slice(0, count));
      return openQuestions(reportOf(level), planUnder(HOME, []).protocol).map(({ rule }) => rule);
    });
    // Without an opening no sun can enter, and nobody is asked about it.
    const sunless = ALL.filter((rule) => rule !== 'direct-sun');
    expect(left).toEqual([
      sunless,
      sunless.slice(1),
      sunless.slice(2),
      sunless.slice(3),
      sunless.slice(3),
      ['floor-drain'],
    ]);
    const last = reportOf(bare(ALL), { support: 'hung' });
    expect(openChecks(last)).toEqual([]);
    expect(headlineOf(last)).toEqual({ kind: 'closed', verdict: 'clear', open: [], word: 'Clear' });
  });

  it('a fan whose stream is not drawn is open, and no answer that there is none can close it', () => {
    const level = { ...bare(), fixtures: [fixtureAt('portable-fan')] };
    const report = reportOf(level, {}, 'pennsylvania-240-310');
    expect(openChecks(report).map(({ rule }) => rule)).toContain('moving-air');
    const questions = openQuestions(report, planUnder('pennsylvania-240-310', []).protocol);
    expect(questions.map(({ rule }) => rule)).not.toContain('moving-air');
  });

  it.each([
    { of: 'tight', at: [10000 - 304.8 - 50 - 10, 0], word: 'Tight to what is drawn' },
    { of: 'blocked', at: [9900, 0], word: 'Blocked' },
    { of: 'unknown', at: [0, 5000], word: 'Unknown' },
  ] as const)('$of with open rules is headed "$word"', ({ of, at, word }) => {
    const level = of === 'unknown' ? { ...bare(), rooms: [] } : bare();
    const headline = headlineOf(reportOf(level, { at }));
    expect(headline).toMatchObject({ kind: 'open', verdict: of, word });
  });
});

describe('what carries it', () => {
  const desk = (change: object = {}) => ({
    id: 't',
    name: 'Desk',
    shape: { box: { center: [0, 5000], width: 600, depth: 400, turn: 0 } } as const,
    bottom: 0,
    top: 900,
    ...change,
  });
  const support = (objects: Level['objects'], change: Partial<Detector> = {}) =>
    reportOf(hall({ objects }), change).checks.filter(({ rule }) => rule === 'support');
  const ON_IT = { subject: 't', verdict: 'clear', notRun: false, measured: null };
  const OPEN = { subject: null, verdict: 'unknown', notRun: true };

  // The detector of the hall: at (0, 5000), base 900, radius 50; the desk spans x −300 to 300, y 4800 to 5200.
  it.each<[string, Level['objects'], Partial<Detector>, object]>([
    ['a desk under the whole foot', [desk()], {}, ON_IT],
    ['its top 3 mm above the base', [desk({ top: 903 })], {}, ON_IT],
    ['its top 3.1 mm above the base', [desk({ top: 903.1 })], {}, OPEN],
    ['its top 3 mm below the base', [desk({ top: 897 })], {}, ON_IT],
    ['its top 3.1 mm below the base', [desk({ top: 896.9 })], {}, OPEN],
    ['the foot flush with the edge', [desk()], { at: [250, 5000] }, ON_IT],
    ['the foot 1 mm over the edge', [desk()], { at: [251, 5000] }, OPEN],
    ['the foot flush in the corner', [desk()], { at: [250, 5150] }, ON_IT],
    ['set past the edge', [desk()], { at: [340, 5000] }, OPEN],
    [
      'a round table, flush',
      [desk({ shape: { circle: { center: [0, 5000], radius: 100 } } })],
      { at: [30, 5040] },
      ON_IT,
    ],
    [
      'a round table, over it',
      [desk({ shape: { circle: { center: [0, 5000], radius: 100 } } })],
      { at: [31, 5041] },
      OPEN,
    ],
    ['nothing', [], {}, OPEN],
    ['nothing, and support null', [], { support: null }, OPEN],
    ['hung', [], { support: 'hung' }, { subject: null, verdict: 'clear', notRun: false }],
    ['a stand of its own', [], { support: 'stand' }, { subject: null, verdict: 'clear', notRun: false }],
  ])('%s', (_, objects, change, row) => {
    expect(support(objects, change)).toMatchObject([row]);
  });

  it('is asked under every profile', () => {
    for (const { id } of PROFILES) expect(rowsOf('support', hall(), id), id).toMatchObject([OPEN]);
  });
});
