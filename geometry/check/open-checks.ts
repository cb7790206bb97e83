import type { Plan } from '../plan/model.ts';
import { effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import type { Check, DetectorReport } from './types.ts';

/** The rows of a report that stand beside the verdict as not run, in the order of the profile. */
export function openChecks({ checks }: DetectorReport): readonly Check[] {
  return checks.filter(({ notRun }) => notRun);
}

/** A question that `lookedFor` of a level can answer. */
export interface LookedForQuestion {
  readonly rule: RuleId;
  /** Name of the rule, e.g. "Sump pit". */
  readonly name: string;
  /** The answer that there is none, e.g. "No sump pit". */
  readonly none: string;
}

/** Every question of the plan's profile that `lookedFor` can answer, in the order of the profile. */
export function lookedForQuestions(protocol: Plan['protocol']): readonly LookedForQuestion[] {
  return effectiveRules(protocol).flatMap(({ id, name, absent }) =>
    absent === null ? [] : [{ rule: id, name, none: absent }],
  );
}

/** The questions that a report leaves open and `lookedFor` can answer: not those about a thing that is drawn. */
export function openQuestions(report: DetectorReport, protocol: Plan['protocol']): readonly LookedForQuestion[] {
  const open = new Set(openChecks(report).flatMap(({ rule, subject }) => (subject === null ? [rule] : [])));
  return lookedForQuestions(protocol).filter(({ rule }) => open.has(rule));
}
