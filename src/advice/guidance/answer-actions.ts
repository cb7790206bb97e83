import { openChecks } from '../../../geometry/check/looked-for.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { levelsInOrder } from '../../../geometry/edit/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { effectiveRules, isOverridable } from '../../../geometry/rules/profiles.ts';
import { type QuestionId, questionOf } from '../walk-round.ts';
import type { HintAction } from './hint.ts';

export const LIVING_PRESS = 'Enter who lives there';
export const GROUND_PRESS = 'Enter what is under it';
export const PURPOSE_ACTION = { kind: 'field', label: 'Enter why', field: 'purpose' } as const satisfies HintAction;

export const ceilingAction = (levelId: string): HintAction => ({ kind: 'level', label: 'Enter its height', levelId });

export function questionAction(levelId: string, question: QuestionId, rule: string): HintAction {
  return { kind: 'question', label: 'Answer it', levelId, question, rule };
}

/**
 * Returns the action that opens the question about a rule that was not run for a detector, or that shows the drawn thing it is about. Null
 * if there is none.
 */
export function actionToSettle(plan: Plan, level: Level, report: DetectorReport, rule: string): HintAction | null {
  const detectorId = report.id;
  const subject = openChecks(report).find((check) => check.rule === rule)?.subject ?? null;
  const row = effectiveRules(plan.protocol).find(({ id }) => id === rule);
  // A subject is drawn, and the profile has no distance for it: the distance is entered with the profile.
  if (subject !== null && row?.least === null && isOverridable(row))
    return { kind: 'stage', label: 'Enter a distance', stage: 'site' };
  const question = questionOf(rule);
  if (question && subject !== null)
    return { kind: 'show', label: 'Show it', levelId: level.id, ids: [subject], at: null };
  if (question) return questionAction(level.id, question, rule);
  // The height of the thing below or beside the detector is not measured.
  if (subject !== null && (rule === 'height-band' || rule === 'object'))
    return { kind: 'show', label: 'Enter its height', levelId: level.id, ids: [subject], at: null, field: 'top' };
  if (rule === 'support') return { kind: 'support', label: 'Enter what carries it', levelId: level.id, detectorId };
  if (rule === 'running-machine') return { kind: 'stage', label: 'Review the house', stage: 'house' };
  if (rule === 'ceiling') return ceilingAction(level.id);
  if (rule !== 'level') return null;
  if (plan.site.purposeAnswered === false) return PURPOSE_ACTION;
  const levels = levelsInOrder(plan);
  const open = levels.find(({ livingAnswered }) => livingAnswered === false);
  if (open) return { kind: 'living', label: LIVING_PRESS, levelId: open.id };
  const bare = levels.find(({ groundAnswered }) => groundAnswered === false);
  return bare ? { kind: 'level', label: GROUND_PRESS, levelId: bare.id } : null;
}
