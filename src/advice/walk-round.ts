import { isDrawn } from '../../geometry/check/subjects.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import type { RuleId } from '../../geometry/rules/types.ts';

/** What a tester asks on a walk round the room, in its order. */
export type QuestionId = 'closes' | 'opens' | 'used' | 'air' | 'heats' | 'wet' | 'sun' | 'stands' | 'sit';

/** The rules that "none here" to a question answers, each on its own. A rule that takes no such answer in the profile is not asked. */
const LOOKS_FOR: readonly (readonly [QuestionId, readonly RuleId[]])[] = [
  ['opens', ['outside-opening']],
  ['air', ['moving-air']],
  ['heats', ['heat']],
  ['wet', ['sump', 'floor-drain']],
  ['sun', ['direct-sun']],
];

/** The question whose answer settles a rule; null where none does. */
export function questionOf(rule: string): QuestionId | null {
  return LOOKS_FOR.find(([, rules]) => rules.some((each) => each === rule))?.[0] ?? null;
}

/** The rules that "none here" to a question answers; none for a question that looks for nothing. */
export function rulesOf(question: QuestionId): readonly RuleId[] {
  return LOOKS_FOR.find(([id]) => id === question)?.[1] ?? [];
}

/** One thing that is looked for on a level, and what is known of it. */
export interface LookRow {
  readonly question: QuestionId;
  readonly rule: EffectiveRule;
  /** What "none here" says: "No sump pit". */
  readonly absent: string;
  /** Settled by the drawing (of direct sun: worked out), by "none here", or open. */
  readonly state: 'drawn' | 'none' | 'open';
  /** Who answered "none here"; empty when it is not known or nobody did. */
  readonly by: string;
  /** RFC 3339, or null when it is not known. */
  readonly at: string | null;
}

/** Everything that the profile wants looked for on a level, in the order of the walk. `reports`: of the level's detectors. */
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

/** Whether the drawing settles a rule: something of it is drawn, or its check ran for every detector without an answer of a person. */
function isSettled(rule: EffectiveRule, model: LevelModel, reports: readonly DetectorReport[]): boolean {
  if (rule.subject.of !== 'sun') return isDrawn(rule, model);
  if (model.level.lookedFor?.includes(rule.id)) return false;
  const checks = reports.flatMap((report) => report.checks.filter((check) => check.rule === rule.id));
  return checks.length > 0 && checks.every(({ notRun }) => !notRun);
}
