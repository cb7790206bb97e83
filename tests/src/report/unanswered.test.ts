import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { drawDocument, type VisitDocument } from '../../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../../src/report/draw-sheets.ts';
import { sheetTexts } from '../../helpers/sheet-texts.ts';
import { validTestPlan } from '../../helpers/valid-test-plan.ts';

const together = (pages: readonly string[]) =>
  pages
    .flatMap((page) => sheetTexts(page).map(({ text }) => text))
    .join(' ')
    .replaceAll(/\s+/g, ' ');
const documentOf = (which: VisitDocument, plan: Plan) =>
  together(drawDocument(which, { plan, paper: 'letter', date: '2026-03-12' }));
const sheetsOf = (plan: Plan) => together(drawSheets({ plan, levelId: 'L1', paper: 'letter', date: '2026-03-12' }));

describe('the reason for the test on paper', () => {
  const answered = validTestPlan();
  const open: Plan = { ...answered, site: { ...answered.site, purposeAnswered: false } };

  it('is printed where it was answered', () => {
    expect(sheetsOf(answered)).toContain('for the occupants');
    expect(documentOf('report', answered)).toContain('Reason for the test The people who live here want to know');
  });

  it('is never printed from a default', () => {
    expect(sheetsOf(open)).toContain('reason for the test not answered');
    expect(sheetsOf(open)).not.toContain('for the occupants');
    expect(documentOf('report', open)).toContain('Reason for the test MISSING');
  });
});
