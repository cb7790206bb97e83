import { expect, it } from 'vitest';
import { withLicense } from '../../../../src/protocol/required-items/report-facts.ts';
import { fullReportPlan } from '../../../helpers/full-report-plan.ts';

it('a license that is changed keeps what the format does not know of it, and its place in the list', () => {
  const full = fullReportPlan();
  const licenses = (full.report?.licenses ?? []).map((each) => ({ ...each, board: 'North' }));
  const plan = { ...full, report: { ...full.report, licenses } };
  expect(withLicense(plan, 'Mara Lindqvist', ' M-9 ').report?.licenses).toEqual([
    { name: 'Mara Lindqvist', license: 'M-9', board: 'North' },
    { name: 'Tom Okafor', license: 'M-3302', board: 'North' },
  ]);
  expect(withLicense(plan, 'Mara Lindqvist', ' ').report?.licenses).toEqual([licenses[1]]);
  expect(withLicense(plan, 'Ida Brandt', 'M-7').report?.licenses).toEqual([
    ...licenses,
    { name: 'Ida Brandt', license: 'M-7' },
  ]);
});
