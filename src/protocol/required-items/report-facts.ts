/** Edits of data that only the report needs. A new section has empty texts, which mean "not known". */
import type { Plan } from '../../../geometry/plan/model.ts';
import type {
  DeviceFacts,
  DrawingFacts,
  Laboratory,
  Party,
  PostalAddress,
  ReportFacts,
} from '../../../geometry/plan/report-facts.ts';

export const NO_ADDRESS: PostalAddress = { street: '', city: '', state: '', zip: '', county: '' };
export const NO_PARTY: Party = { name: '', address: '', telephone: '', email: '', license: '' };
export const NO_LABORATORY: Laboratory = {
  name: '',
  address: '',
  license: '',
  analyst: '',
  analyzed: null,
  reported: null,
};
export const NO_DRAWING: DrawingFacts = { by: '', at: null };
export const NO_DEVICE: DeviceFacts = { description: '', maker: '', model: '', calibrated: '', expires: '' };

/** Returns the plan with some of the data for the report changed. */
export function withReportFacts(plan: Plan, change: ReportFacts): Plan {
  return { ...plan, report: { ...plan.report, ...change } };
}

/** Returns the plan with the license of a person changed; an empty one is removed. */
export function withLicense(plan: Plan, name: string, license: string): Plan {
  const known = plan.report?.licenses ?? [];
  const isOwn = (each: { readonly name: string }) => each.name.trim() === name;
  const own = known.find(isOwn);
  const number = license.trim();
  if (!number) return withReportFacts(plan, { licenses: known.filter((each) => !isOwn(each)) });
  if (!own) return withReportFacts(plan, { licenses: [...known, { name, license: number }] });
  const kept = known.filter((each) => each === own || !isOwn(each));
  return withReportFacts(plan, { licenses: kept.map((each) => (each === own ? { ...own, license: number } : each)) });
}

/** Data that stays the same from one job to the next. */
export type UsualFacts = Pick<ReportFacts, 'firm' | 'laboratory' | 'device' | 'licenses'>;

/** Returns the data of a report that can be used for the next one, without the dates and the analyst of this test. */
export function usualFacts({ report = {} }: Plan): UsualFacts {
  const { firm, laboratory, device, licenses } = report;
  return {
    ...(firm ? { firm } : {}),
    ...(laboratory ? { laboratory: { ...laboratory, analyst: '', analyzed: null, reported: null } } : {}),
    ...(device ? { device: { ...device, expires: '' } } : {}),
    ...(licenses ? { licenses } : {}),
  };
}

/** Returns the plan with the usual facts for each section that it does not have. */
export function withUsualFacts(plan: Plan, usual: UsualFacts): Plan {
  return { ...plan, report: { ...usual, ...plan.report } };
}
