import { isDrawn } from '../../geometry/check/subjects.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import type { RuleId } from '../../geometry/rules/types.ts';

/** The questions that a tester answers on a walk through the level, in order. */
export type QuestionId = 'closes' | 'opens' | 'used' | 'air' | 'heats' | 'wet' | 'sun' | 'stands' | 'sit';

/** The rules that "none here" to a question answers, each separately. A rule without this answer in the profile is not asked. */
const LOOKS_FOR: readonly (readonly [QuestionId, readonly RuleId[]])[] = [
  ['opens', ['outside-opening']],
  ['air', ['moving-air']],
  ['heats', ['heat']],
  ['wet', ['sump', 'floor-drain']],
  ['sun', ['direct-sun']],
];

/** Returns the question whose answer settles a rule; null if none does. */
export function questionOf(rule: string): QuestionId | null {
  return LOOKS_FOR.find(([, rules]) => rules.some((each) => each === rule))?.[0] ?? null;
}

/** Returns the rules that "none here" to a question answers; empty for a question without this answer. */
export function rulesOf(question: QuestionId): readonly RuleId[] {
  return LOOKS_FOR.find(([id]) => id === question)?.[1] ?? [];
}

/** A subject that is looked for on a level, and the answer. */
export interface LookRow {
  readonly question: QuestionId;
  readonly rule: EffectiveRule;
  /** Text of the answer "none here": "No sump pit". */
  readonly absent: string;
  /** "drawn": settled by the drawing, or direct sun is computed; "none": answered "none here"; else open. */
  readonly state: 'drawn' | 'none' | 'open';
  /** Who answered "none here"; empty if it is not recorded or not answered. */
  readonly by: string;
  /** Time of the answer, RFC 3339; null if it is not known. */
  readonly at: string | null;
}

/** Returns all subjects that the profile requires to be looked for on a level, in the order of the walk. `reports`: of the level's detectors. */
export function looksOf({ protocol }: Plan, model: LevelModel, reports: readonly DetectorReport[]): readonly LookRow[] {
  const rules = effectiveRules(protocol);
  const { lookedFor = [], lookedForBy = [] } = model.level;
  return LOOKS_FOR.flatMap(([question, ids]) =>
    ids.flatMap((id): readonly LookRow[] => {
      const rule = rules.find((each) => each.id === id);
      if (!rule || rule.absent === null) return [];
      const none = lookedFor.includes(id);
      const signed = none ? lookedForBy.find((each) => each.rule === id) : undefined;
      const answered = none ? 'none' : 'open';
      const state = isSettled(rule, model, reports) ? 'drawn' : answered;
      return [{ question, rule, absent: rule.absent, state, by: signed?.by.trim() ?? '', at: signed?.at ?? null }];
    }),
  );
}

/** Whether a rule is settled without an answer: a subject is drawn, or, for direct sun, the check ran for every detector. */
function isSettled(rule: EffectiveRule, model: LevelModel, reports: readonly DetectorReport[]): boolean {
  if (rule.subject.of !== 'sun') return isDrawn(rule, model);
  if (model.level.lookedFor?.includes(rule.id)) return false;
  const checks = reports.flatMap((report) => report.checks.filter((check) => check.rule === rule.id));
  return checks.length > 0 && checks.every(({ notRun }) => !notRun);
}
