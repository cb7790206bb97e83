/** What somebody recorded stands in the report as it was recorded: common practice, no published source, where none is named. */
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { EarlierResult } from '../../../../geometry/plan/test-record.ts';
import { withAgreement } from '../../../../src/protocol/conditions/agreement.ts';
import { withLogEntry } from '../../../../src/protocol/custody/log-entries.ts';
import { reportContent } from '../../../../src/report/documents/report-content.ts';
import { reportJson, reportTable } from '../../../../src/report/documents/report-data.ts';
import { fullReportPlan } from '../../../helpers/full-report-plan.ts';
import { pageProblems } from '../../../helpers/page-problems.ts';
import { draw, words } from './job-plans.ts';

const plan = fullReportPlan();
const [first = ''] = plan.levels.flatMap(({ detectors }) => detectors.map(({ id }) => id));
function never(): never {
  throw new Error('The full plan has it.');
}
const reportOf = (change: Partial<Plan>) => words('report', { ...plan, ...change });

/** 32 Ill. Adm. Code 422.130(o)(1)(I): tampering, interference and deviations that were observed (training copy). */
describe('a long text of the log', () => {
  const long = (word: string) =>
    `${word}: the lid lay beside it, the tape was cut, and the box stood in another corner`;

  it.each(['note', 'serial', 'placedBy', 'fetchedBy'] as const)('is not cut off: %s', (key) => {
    expect(words('report', withLogEntry(plan, first, { [key]: long(key) }))).toContain(long(key));
  });

  it('is not cut off: names and note of a transfer', () => {
    const custody = [{ at: plan.visit.posted ?? null, from: long('from'), to: long('to'), note: long('note') }];
    const text = words('report', withLogEntry(plan, first, { custody }));
    for (const each of ['from', 'to', 'note']) expect(text).toContain(long(each));
  });

  // A note may have 10,000 characters (the plan format).
  const told = (what: string) =>
    `${`${what} was open, then shut again. `.repeat(400).slice(0, 9_980)} The end of ${what}.`;
  const report = plan.report ?? never();
  const windows = plan.conditions.map((each) =>
    each.item === 'windows-closed' ? { ...each, state: 'broken' as const, note: told('it') } : each,
  );
  it.each<readonly [string, Partial<Plan>]>([
    ['finished areas', { report: { ...report, areas: told('it') } }],
    ['permanent vents', { report: { ...report, vents: told('it') } }],
    ['mitigation system', { report: { ...report, mitigation: { seen: 'none', note: told('it') } } }],
    ['weather', { weather: [{ at: '2026-03-08T12:00:00-04:00', text: told('it') }] }],
    ['forecast', { visit: { ...plan.visit, forecast: { ...(plan.visit.forecast ?? never()), note: told('it') } } }],
    ['a condition', { conditions: windows }],
    ['an earlier answer to a condition', { conditions: [...windows, ...plan.conditions.slice(0, 1)] }],
  ])('of 10,000 characters is not cut off: %s', (_, change) => {
    const text = reportOf(change);
    expect(text).toContain('The end of it.');
    // By a word, because a sentence may stand on two pages.
    expect(text.split(' shut ')).toHaveLength(told('it').split(' shut ').length);
    expect(pageProblems(draw('report', { ...plan, ...change }))).toEqual([]);
  });

  it('has its name again where it goes on', () => {
    expect(reportOf({ report: { ...report, vents: told('it') } })).toContain('Permanent vents, continued');
    expect(reportOf({ conditions: windows })).toContain('Windows closed on every level, continued');
    expect(reportOf({})).not.toContain('continued');
  });

  it('of the widest letters leaves the value of its detector: a label', () => {
    const levels = plan.levels.map((level) => ({
      ...level,
      detectors: level.detectors.map((each, i) => ({ ...each, label: `${'W'.repeat(199)}${i}` })),
    }));
    for (const change of [{}, { levels }])
      for (const value of ['4.4 pCi/L (162.8 Bq/m³)', '4.8 pCi/L (177.6 Bq/m³)'])
        expect(reportOf(change)).toContain(value);
  });

  it('is not written out a second time where it is short', () => {
    expect(reportOf({})).not.toContain('Written out');
  });
});

describe('the non-interference agreement', () => {
  it('stands in the report with who signed and when', () => {
    const signed = withAgreement(plan, { signedBy: 'Odd Renner', at: '2026-03-07T17:00:00-05:00', note: 'By phone' });
    expect(words('report', signed)).toMatch(
      /Non-interference agreement Signed by Odd Renner, .*March 7, 2026, 5:00 pm\. By phone/,
    );
  });

  it('that was refused says so', () => {
    const refused = withAgreement(plan, { signedBy: '', at: null, refused: true, note: 'Would not sign' });
    expect(words('report', refused)).toMatch(/Non-interference agreement Refused, .*Would not sign/);
  });

  it('that is open keeps its note, and nothing reads as signed', () => {
    const open = words('report', withAgreement(plan, { note: 'Asked on the porch' }));
    expect(open).toMatch(/Non-interference agreement Not signed, as far as is known\. Asked on the porch/);
  });
});

describe('an earlier test', () => {
  const earlier: EarlierResult = {
    at: '2026-01-17T10:00:00-05:00',
    value: 111,
    unit: 'Bq/m3',
    term: 'short-term',
    note: 'Owner read it out',
    detector: first,
  };

  it('stands in the report with day, values in both units, place and note, and what it does to the result', () => {
    const text = reportOf({ site: { ...plan.site, purpose: 'own-household' }, earlier: [earlier] });
    expect(text).toMatch(
      /Short-term test, .*January 17, 2026.*: 111 Bq\/m³ \(3\.0 pCi\/L\), at A1\. Owner read it out/,
    );
    expect(text).toContain('With it:');
  });

  it('stands there where it counts for no place, and where the test is invalid', () => {
    const text = reportOf({
      visit: { ...plan.visit, end: '2026-03-09T09:00:00-04:00' },
      earlier: [{ ...earlier, at: null, detector: null }],
    });
    expect(text).toContain(
      'Short-term test, on a day that is not known: 111 Bq/m³ (3.0 pCi/L), at a place that is not known.',
    );
  });
});

describe('an answer about the house that the log or the drawing contradicts', () => {
  const told = { by: 'Ida Brandt', at: '2026-03-10T09:05:00-04:00', note: 'Looked at both' };

  it('stays on record beside the evidence of tampering', () => {
    const conditions = plan.conditions.map((each) => (each.item === 'not-disturbed' ? { ...each, ...told } : each));
    const text = words('report', withLogEntry({ ...plan, conditions }, first, { tampering: 'seen' }));
    expect(text).toMatch(/NOT met .*also on record Met Ida Brandt, .*Mar 10, 2026, 9:05 am/);
  });

  it('stays on record where "not applicable" does not fit', () => {
    const conditions = plan.conditions.map((each) =>
      each.item === 'windows-closed' ? { ...each, ...told, state: 'not-applicable' as const } : each,
    );
    expect(reportOf({ conditions })).toMatch(/also on record Not applicable Ida Brandt, .*Mar 10, 2026, 9:05 am/);
  });
});

/** 32 Ill. Adm. Code 422.130(o)(1)(A): the results. Which of two is right is for the laboratory to say. */
describe('a second result of one detector', () => {
  const [reading] = plan.readings;
  const twice = { ...plan, readings: [...plan.readings, { ...(reading ?? never()), value: 9.07 }] };

  it('stands in the report, in its table and in its JSON', () => {
    const content = reportContent(twice);
    expect(words('report', twice)).toMatch(/A1: 4\.4 pCi\/L .*A1: 9\.07 pCi\/L .*A2: 4\.8 pCi\/L/);
    expect(reportTable(content).map((row) => row.slice(4, 6))).toEqual([
      ['detector', 'value'],
      ['A1', 4.4],
      ['A1', 9.07],
      ['A2', 4.8],
    ]);
    expect(reportJson(content).sets[0]).toMatchObject({ values: [4.4, 9.07, 4.8], mean: null, undecided: [first] });
  });

  it('leaves the required item missing', () => {
    const { missing } = reportJson(reportContent(twice));
    expect(missing).toMatchObject([{ id: 'results', lacking: ['A1 (more than one)'] }]);
  });

  it('is no result of the other one', () => {
    const alone = { ...twice, readings: twice.readings.filter(({ detector }) => detector === first) };
    const { sets } = reportJson(reportContent(alone));
    expect(sets[0]).toMatchObject({ values: [4.4, 9.07], mean: null, step: 'undecided' });
  });
});

describe('the table of the report', () => {
  const cells = (plan: Plan) => {
    const [head = [], ...rows] = reportTable(reportContent(plan));
    return rows.map((row) => Object.fromEntries(head.map((name, i) => [name, row[i]])));
  };

  // 32 Ill. Adm. Code 422.130(o)(1)(A): the result of each detector; one that is not known is not left out.
  it('has a row of each detector, also without a result', () => {
    expect(cells({ ...plan, readings: plan.readings.slice(1) })).toMatchObject([
      { detector: 'A1', value: '', unit: '', test: 'unknown', 'location holds': 'no' },
      { detector: 'A2', value: 4.8, unit: 'pCi/L', test: 'unknown', 'location holds': 'no' },
    ]);
    expect(cells({ ...plan, readings: [] })).toMatchObject([
      { detector: 'A1', value: '', test: 'unknown', 'location holds': 'no', 'mean pCi/L': '' },
      { detector: 'A2', value: '', test: 'unknown', 'location holds': 'no', 'mean pCi/L': '' },
    ]);
  });

  it('says why a test is not valid, as the pages and the JSON do', () => {
    const [row] = cells({ ...plan, visit: { ...plan.visit, end: '2026-03-09T09:00:00-04:00' } });
    expect(row).toMatchObject({ test: 'not-evaluated' });
    expect(row?.remarks).toContain('short of the kit');
  });

  it('has the times by the clock of the site, as the pages have them', () => {
    const [row] = cells({
      ...plan,
      visit: { ...plan.visit, start: '2026-03-07T23:00:00Z', end: '2026-03-10T13:00:00Z' },
    });
    expect(row).toMatchObject({ start: '2026-03-07T18:00:00-05:00', end: '2026-03-10T09:00:00-04:00' });
  });
});

it('two detectors of one label are told apart in the table', () => {
  const [level] = plan.levels;
  if (!level) never();
  const detectors = level.detectors.map((each) => ({ ...each, id: `${each.id}-up` }));
  const upper = { ...level, id: 'L9', name: 'Upper floor', order: 1, walls: [], openings: [], rooms: [], detectors };
  const readings = [...plan.readings, ...plan.readings.map((each) => ({ ...each, detector: `${each.detector}-up` }))];
  const table = reportTable(reportContent({ ...plan, levels: [level, upper], readings }));
  expect(table.slice(1).map(([, , , , name]) => name)).toEqual([
    'A1 (Basement)',
    'A2 (Basement)',
    'A1 (Upper floor)',
    'A2 (Upper floor)',
  ]);
});

it('the hours of a mitigation system stand in the report of a long-term test too', () => {
  const text = reportOf({
    protocol: { profile: 'health-canada-long-term', overrides: [] },
    visit: { ...plan.visit, mitigationOnSince: '2026-03-01T07:07:00-05:00' },
  });
  expect(text).toMatch(/Mitigation system on since .*March 1, 2026, 7:07 am/);
});

/** 32 Ill. Adm. Code 422.130(o)(1)(K): severe weather during the test (training copy). */
describe('weather', () => {
  const before = { at: '2026-03-01T12:00:00-05:00', text: 'Gusts and hail' };

  it('that was noted before the start is not told as noted during the test', () => {
    const text = reportOf({ weather: [before] });
    expect(text).toMatch(/Weather noted before the test .*March 1, 2026.*Gusts and hail/);
    expect(text).toMatch(/Weather noted during the test MISSING/);
  });

  it('of both times stands in two rows', () => {
    const text = reportOf({ weather: [before, ...(plan.weather ?? [])] });
    expect(text).toMatch(/Weather noted during the test .*Dry, light wind.*Weather noted before the test/);
  });
});

it('parts that hold nothing but spaces leave no empty places in a row', () => {
  const { client, firm, device, laboratory } = plan.report ?? {};
  if (!client || !firm || !device || !laboratory) never();
  const text = reportOf({
    report: {
      ...plan.report,
      client: { ...client, name: ' ', telephone: '\t' },
      firm: { ...firm, address: '\u00a0', license: ' ' },
      device: { ...device, description: ' ' },
      laboratory: { ...laboratory, address: ' ', analyst: '' },
      address: { street: ' ', city: 'Fernhollow', state: ' ', zip: '60000', county: '' },
    },
  });
  expect(text).not.toMatch(/, ,|Client ,|Device ,|Firm: ,|license\s*,/);
  expect(text).toMatch(/Client 2 Elm Row This report/);
  expect(text).toMatch(/Address in parts Fernhollow, 60000\. MISSING: street and state/);
  expect(text).toMatch(/Firm: Lindqvist Testing, 555-0177 Name/);
});
