/**
 * The published lists of what a report holds, clause by clause, against the words of the report itself. Written from the lists, not from
 * the table that the report is made from.
 */
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { reportContent } from '../../../../src/report/documents/report-content.ts';
import { reportJson } from '../../../../src/report/documents/report-data.ts';
import { fullReportPlan } from '../../../helpers/full-report-plan.ts';
import { words } from './job-plans.ts';

interface Clause {
  readonly cite: string;
  /** Rows of the report's last table that stand for the clause, as they begin. */
  readonly rows: readonly string[];
  /** What a full job has of it, in the report outside that table. */
  readonly evidence: readonly string[];
}

/** 32 Ill. Adm. Code 422.130(o)(1)(A) to (L), in training copies of the text. */
const ILLINOIS: readonly Clause[] = [
  clause('422.130(o)(1)(A)', ['The result of each detector'], ['A1: 4.4 pCi/L', 'A2: 4.8 pCi/L', '4.6 pCi/L']),
  clause('422.130(o)(1)(B)', ['Day and time of start and end'], ['March 7, 2026, 6:00 pm', 'March 10, 2026, 9:00 am']),
  clause('422.130(o)(1)(C)', ['Address of the building', 'ZIP code'], ['7 Alder Court, Fernhollow, IL 60000']),
  clause(
    '422.130(o)(1)(D)',
    ['Description, maker and model', 'Serial number of each detector'],
    ['Activated charcoal with diffusion barrier, Invented Maker, C-100', 'A1: CX-100', 'A2: CX-101'],
  ),
  clause(
    '422.130(o)(1)(E)',
    ['Who placed', 'Who picked', 'License numbers of those'],
    ['Mara Lindqvist Placed M-3301', 'Tom Okafor Picked up M-3302'],
  ),
  clause('422.130(o)(1)(F)', ['Name and license of the laboratory'], ['Harbor Bench Laboratory', 'L-88']),
  clause('422.130(o)(1)(G)', ['Whether to test again or to mitigate'], ['In a sale: fix the home']),
  clause('422.130(o)(1)(H)', ['Mitigation system seen'], ['Mitigation system None found']),
  clause(
    '422.130(o)(1)(I)',
    ['Evidence of tampering', 'Conditions of the building, with deviations'],
    ['Evidence of tampering', 'The building during the test'],
  ),
  clause('422.130(o)(1)(J)', ['Condition of permanent vents'], ['No crawl space; combustion air vent open']),
  clause('422.130(o)(1)(K)', ['Severe weather'], ['Dry, light wind']),
  clause(
    '422.130(o)(1)(L)',
    ['Exact place of each detector', 'Scale drawing', 'Finished and unfinished areas'],
    ['north wall 9 ft 4 in', 'Scale 1/4 in = 1 ft (1:48)', 'Finished and unfinished areas All rooms are finished'],
  ),
];

/** ANSI/AARST MAH-2019, 8.5.2 to 8.5.9, as far as the text was read. */
const MAH: readonly Clause[] = [
  clause(
    '8.5.2(a)(2)',
    ['Day and time of start and end', 'Exact place of each detector'],
    ['6:00 pm', 'north wall 9 ft 4 in'],
  ),
  // (b) one figure after the point, (c) each result and the average, (d) no average over two places.
  clause('8.5.2(b) to (d)', ['The result of each detector'], ['A1: 4.4 pCi/L', 'A2: 4.8 pCi/L', '4.6 pCi/L']),
  clause('8.5.4', ['Conditions of the building, with deviations'], ['The building during the test']),
  clause(
    '8.5.9.2',
    ['What a low result does not show'],
    [
      'between 2 and 4 pCi/L, consider fixing',
      'while the heating runs day and night',
      // The step of a result may ask for one within 2 years.
      'at least every 5 years, sooner where the next step says so',
      'every 2 years in a building with a mitigation system',
      'when it is sold',
    ],
  ),
];

/** Of a continuous monitor alone. */
const MAH_MONITOR: readonly Clause[] = [
  clause('8.5.3(a) and (c)', ['Hourly readings of a monitor'], ['On request from the firm; the first 4 h left out']),
  clause('8.5.3(b)', ['Day of the last calibration'], ['Calibrated February 2, 2026']),
];

/** 25 Pa. Code 240.303(1)(i)(A) to (G). */
const PENNSYLVANIA: readonly Clause[] = [
  clause(
    '240.303(1)(i)(A)',
    ['License numbers of those', 'Name and license of the laboratory'],
    ['M-3301', 'Harbor Bench Laboratory', 'L-88'],
  ),
  clause(
    '240.303(1)(i)(B)',
    ['Address of the building', 'ZIP code', 'County'],
    ['7 Alder Court, Fernhollow, IL 60000', 'County Reed'],
  ),
  clause(
    '240.303(1)(i)(C)',
    ['Day and time of start and end', 'Description, maker and model', 'Exact place of each detector'],
    ['March 7, 2026', 'Activated charcoal'],
  ),
  clause(
    '240.303(1)(i)(D)',
    ['Type of building', 'Description, maker and model', 'Exact place of each detector', 'The result of each detector'],
    ['Single-family house', '4.4 pCi/L'],
  ),
  clause('240.303(1)(i)(E)', ['Mitigation system seen'], ['Mitigation system None found']),
  clause('240.303(1)(i)(F)', ['Day of the analysis'], ['Analyzed Thu, Mar 12, 2026, 10:00 am']),
  clause('240.303(1)(i)(G)', ['Serial number of each detector'], ['A1: CX-100']),
];

function clause(cite: string, rows: readonly string[], evidence: readonly string[]): Clause {
  return { cite, rows, evidence };
}

const LAST_TABLE = 'What the published lists require';

/** The row of the last table that begins so, as far as the next word of state goes, and the rest of the table. */
function rowOf(text: string, begins: string): { readonly state: string; readonly rest: string } {
  const table = text.slice(text.lastIndexOf(LAST_TABLE));
  const rest = table.slice(table.indexOf(` ${begins}`) + 1);
  const [state = ''] = /Present|MISSING|Not applicable/.exec(rest) ?? [];
  return { state: rest.startsWith(begins) ? state : `no row "${begins}"`, rest };
}

const full = fullReportPlan();
const { forecast: _, ...visit } = full.visit;
/** Paragraphs of what is known, half of it. */
const half: Plan = {
  ...full,
  visit: { ...visit, end: null },
  readings: full.readings.slice(0, 1),
  weather: [],
  conditions: full.conditions.slice(1),
  log: (full.log ?? []).map((entry) => ({ ...entry, serial: '', fetchedBy: '', tampering: 'unknown' as const })),
  levels: full.levels.map((level) => ({
    ...level,
    rooms: [],
    lookedFor: (level.lookedFor ?? []).filter((rule) => rule !== 'outside-opening'),
  })),
  report: { firm: full.report?.firm ?? never(), licenses: [] },
};
const monitor: Plan = {
  ...full,
  visit: { ...full.visit, device: 'monitor' },
  report: {
    ...full.report,
    device: {
      ...(full.report?.device ?? never()),
      calibrated: '2026-02-02',
      hourly: 'On request from the firm; the first 4 h left out',
    },
  },
};
function never(): never {
  throw new Error('The full job has these.');
}

describe.each([
  ['Illinois', ILLINOIS, full],
  ['MAH-2019', MAH, full],
  ['MAH-2019 of a monitor', MAH_MONITOR, monitor],
  ['Pennsylvania', PENNSYLVANIA, full],
] as const)('the list of %s', (_, list, plan) => {
  const text = words('report', plan);
  const table = text.slice(text.lastIndexOf(LAST_TABLE), text.lastIndexOf('Name, address and telephone of the firm'));

  it.each(list)('$cite: a full job has it, and the table says so under its clause', ({ cite, rows, evidence }) => {
    for (const begins of rows) {
      const { state, rest } = rowOf(text, begins);
      expect([begins, state]).toEqual([begins, 'Present']);
      expect(rest.slice(0, 400), begins).toContain(cite);
    }
    // As lists of words: what is not there is named, not the whole report.
    expect(evidence.filter((part) => !text.replace(table, '').includes(part))).toEqual([]);
  });
});

describe('a job of which half is known', () => {
  const text = words('report', half);

  it.each([
    ['The result of each detector', 'MISSING'],
    ['Day and time of start and end', 'MISSING'],
    ['Address of the building', 'MISSING'],
    ['ZIP code', 'MISSING'],
    ['County', 'MISSING'],
    ['Type of building', 'MISSING'],
    ['Description, maker and model', 'MISSING'],
    ['Serial number of each detector', 'MISSING'],
    ['Day of the last calibration', 'Not applicable'],
    ['Hourly readings of a monitor', 'Not applicable'],
    ['Who placed', 'Present'],
    ['Who picked', 'MISSING'],
    ['License numbers of those', 'MISSING'],
    ['Name and license of the laboratory', 'MISSING'],
    ['Day of the analysis', 'MISSING'],
    ['Whether to test again or to mitigate', 'Present'],
    ['What a low result does not show', 'Present'],
    ['Mitigation system seen', 'MISSING'],
    ['Evidence of tampering', 'MISSING'],
    ['Conditions of the building, with deviations', 'MISSING'],
    ['Condition of permanent vents', 'MISSING'],
    ['Severe weather', 'MISSING'],
    ['Exact place of each detector', 'Present'],
    ['Scale drawing', 'MISSING'],
    ['Finished and unfinished areas', 'MISSING'],
  ])('%s: %s', (begins, state) => {
    expect(rowOf(text, begins).state).toBe(state);
  });

  it('says of every clause of every list whether it is there: none is silent, on paper or in the file', () => {
    const { items, missing } = reportJson(reportContent(half));
    const lists = new Map(missing.map(({ id, lists }) => [id, lists.join('; ')]));
    for (const { state } of items) expect(['present', 'missing', 'not-applicable']).toContain(state);
    expect(items.filter(({ state }) => state === 'missing').map(({ id }) => id)).toEqual([...lists.keys()]);
    for (const { cite, rows } of [...ILLINOIS, ...MAH, ...MAH_MONITOR, ...PENNSYLVANIA])
      for (const begins of rows)
        expect(rowOf(text, begins).state, cite).toMatch(/^(?:Present|MISSING|Not applicable)$/);
  });

  it('says in the sections what is not known, too, and not that there is nothing', () => {
    for (const part of [
      'Address in parts MISSING: street, city, state and ZIP code',
      'Permanent vents MISSING',
      'Forecast before the start MISSING',
      'Weather noted during the test MISSING',
      'Mitigation system MISSING',
    ])
      expect(text).toContain(part);
    expect(text).toContain('Finished and unfinished areas MISSING: use of 1 room');
    expect(text).not.toContain('None found');
    // Every room has a use, and nobody said which areas are finished.
    const full = fullReportPlan();
    const notAsked = words('report', { ...full, report: { ...full.report, areas: '' } });
    expect(notAsked).toContain('Finished and unfinished areas MISSING: not answered');
    expect(notAsked).not.toMatch(/[Uu]nfinished (?:rooms|areas) None/);
    // Of an address the part that is missing.
    const { address = never() } = full.report ?? {};
    const noCity = words('report', { ...full, report: { ...full.report, address: { ...address, city: '' } } });
    expect(noCity).toContain('Address in parts 7 Alder Court, IL 60000. MISSING: city');
  });
});
