import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Computed } from '../../../../geometry/recheck/compare.ts';
import { drawDocument, type VisitDocument } from '../../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../../src/report/draw-sheets.ts';
import { samplePlan } from '../../../helpers/sample-files.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';
import { houseLevel, pairAt, validTestPlan } from '../../../helpers/valid-test-plan.ts';

const together = (pages: readonly string[]) =>
  pages
    .flatMap((svg) => sheetTexts(svg).map(({ text }) => text))
    .join(' ')
    .replaceAll('\u00a0', ' ');

type Opinions = ReadonlyMap<string, Computed>;
const document = (which: VisitDocument) => (plan: Plan, computed?: Opinions) =>
  together(drawDocument(which, { plan, paper: 'letter', date: '2026-03-20', ...(computed ? { computed } : {}) }));
const sheets = (plan: Plan, computed?: Opinions) =>
  drawSheets({ plan, levelId: 'L1', paper: 'letter', date: '2026-03-20', ...(computed ? { computed } : {}) });
const first = (plan: Plan, computed?: Opinions) => together(sheets(plan, computed).slice(0, 1));
const PAPERS = ['sheet', 'log', 'report'] as const;
const told = { sheet: first, log: document('log'), report: document('report') };
const card = document('placement-card');

const twice: Opinions = new Map(['L1d1', 'L1d2'].map((id) => [id, { how: 'twice' }]));
/** What the second computation may say of one detector of the pair. */
const differs: Computed = {
  how: 'differs',
  first: 'clear',
  second: 'blocked',
  rules: [
    {
      rule: 'outside-wall',
      first: { verdict: 'clear', measured: 352.4 },
      second: { verdict: 'blocked', measured: 232.1 },
    },
  ],
};

/** A pair whose underside lies at 4 in, where 20 in is the least: 25 Pa. Code 240.310(a)(1). */
const low = validTestPlan([1, 1.1], { levels: [houseLevel('L1', 'A', { detectors: pairAt('L1', 'A', 101.6) })] });

describe.each(PAPERS)('the %s', (paper) => {
  const of = told[paper];

  it('says that a test with a blocked detector is not evaluated, and why', () => {
    const text = of(low);
    expect(text).toContain('The test: invalid, do not use.');
    expect(text).toContain('A1 is blocked: 4 in above the floor, needs 1 ft 8 in.');
    expect(text).not.toMatch(/This result does not call for fixing the home|Test again every/);
  });

  it('says that a test holds only where it does, and what follows', () => {
    expect(of(validTestPlan())).toContain('The test: valid.');
    expect(of({ ...validTestPlan(), conditions: [] })).toContain('The test: unknown.');
    expect(of(samplePlan('01-plain-basement'))).not.toContain('The test: holds');
    // Two locations are called for on another level, and only one has a result: the headline of the app says no more.
    const upstairs = houseLevel('L2', 'B', { order: 1, detectors: [] });
    const half = { ...validTestPlan(), levels: [houseLevel(), upstairs] };
    const pennsylvania = { ...half, protocol: { profile: 'pennsylvania-240-310', overrides: [] } };
    expect(of(pennsylvania)).not.toContain('The test: valid.');
  });

  it('says how its verdicts were computed', () => {
    expect(of(validTestPlan(), twice)).toContain('Computed twice, in two ways.');
    expect(of(validTestPlan())).toContain('Computed once.');
  });

  it('leaves a test open on whose placement the two computations differ, with both figures', () => {
    const text = of(validTestPlan(), new Map<string, Computed>([...twice, ['L1d1', differs]]));
    expect(text).toContain('The test: unknown.');
    expect(text).toContain('352.4 mm');
    expect(text).toContain('232.1 mm');
  });

  it('says what nobody looked for and what was not run', () => {
    const text = of({ ...validTestPlan(), levels: [houseLevel('L1', 'A', { lookedFor: ['heat'] })] });
    expect(text).toMatch(/[Nn]ot looked for.*sump pit/);
    // The pair has 1/2 in to spare, less than the tape may be off.
    expect(text).toContain('tight to what is drawn');
  });
});

it('says where a table goes on of which detector it is', () => {
  const text = together(
    drawSheets({ plan: samplePlan('03-crowded-utility'), levelId: 'L1', paper: 'letter', date: 'x' }),
  );
  expect(text).toContain('C2, continued Compared with');
});

it('writes every cause on the sheets after the drawing', () => {
  const text = together(sheets({ ...low, conditions: [] }));
  for (const part of ['A1 is blocked', 'A2 is blocked', 'items not known yet']) expect(text).toContain(part);
});

describe('the placement card', () => {
  it('tells no verdict on which the two computations differ, and how they were computed', () => {
    expect(card(validTestPlan(), twice)).toContain('Computed twice, in two ways.');
    const text = card(validTestPlan(), new Map<string, Computed>([...twice, ['L1d1', differs]]));
    expect(text).toContain('Verdict on the plan: unknown.');
    expect(text).toContain('Computed twice, in two ways that differ');
  });
});

it('says of a location that is not known to be valid that nothing is evaluated, and not that it is invalid', () => {
  const text = told.report({ ...validTestPlan(), conditions: [] });
  expect(text).toContain('Not known to be valid');
  expect(text).not.toContain('Invalid, do not use');
  expect(told.report(low)).toContain('Invalid, do not use');
});
