import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import { lowerFirst } from '../plan/nouns.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { reasonCheck } from './measure.ts';
import type { Check, DetectorReport } from './types.ts';

/** Returns whether a person looked for the subjects of a rule on a level and found none. */
export function wasLookedFor({ level }: LevelModel, { id }: EffectiveRule): boolean {
  return level.lookedFor?.includes(id) ?? false;
}

/**
 * Returns the row of a rule without subjects on the level: clear if somebody looked for them, else not run, because
 * subjects that nobody looked for are not clear. No row for a rule without such a statement (`absent`).
 */
export function checkAbsent(model: LevelModel, rule: EffectiveRule): Check[] {
  if (rule.absent === null) return [];
  const looked = wasLookedFor(model, rule);
  const row = looked
    ? reasonCheck(rule, 'clear', `Looked for on this level: ${lowerFirst(rule.absent)}.`)
    : reasonCheck(
        rule,
        'unknown',
        'Nothing of it is drawn on this level, and nobody has recorded that there is none.',
        true,
      );
  return [{ ...row, required: rule.least }];
}

/** Returns the checks of a report that were not run, in profile order. */
export function openChecks({ checks }: DetectorReport): readonly Check[] {
  return checks.filter(({ notRun }) => notRun);
}

/** A question that a level's `lookedFor` answers. */
export interface LookedForQuestion {
  readonly rule: RuleId;
  /** Name of the rule, e.g. "Sump pit". */
  readonly name: string;
  /** The statement that there is none, e.g. "No sump pit". */
  readonly none: string;
}

/** Returns every question of the plan's profile that `lookedFor` can answer, in profile order. */
export function lookedForQuestions(protocol: Plan['protocol']): readonly LookedForQuestion[] {
  return effectiveRules(protocol).flatMap(({ id, name, absent }) =>
    absent === null ? [] : [{ rule: id, name, none: absent }],
  );
}

/** Returns the unanswered questions of a report that `lookedFor` can answer: not those about items that are drawn. */
export function openQuestions(report: DetectorReport, protocol: Plan['protocol']): readonly LookedForQuestion[] {
  const open = new Set(openChecks(report).flatMap(({ rule, subject }) => (subject === null ? [rule] : [])));
  return lookedForQuestions(protocol).filter(({ rule }) => open.has(rule));
}
