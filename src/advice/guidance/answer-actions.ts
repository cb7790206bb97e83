import { openChecks } from '../../../geometry/check/looked-for.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { levelsInOrder } from '../../../geometry/edit/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { type QuestionId, questionOf } from '../walk-round.ts';
import type { HintAct } from './hint.ts';

export const LIVING_PRESS = 'Say who lives there';
export const PURPOSE_ACT = { kind: 'field', label: 'Say why', field: 'purpose' } as const satisfies HintAct;

export function questionAct(levelId: string, question: QuestionId, rule: string): HintAct {
  return { kind: 'question', label: 'Answer it', levelId, question, rule };
}

/**
 * Returns the act that leads to where a rule that was not run for a detector is answered; for a thing that is drawn, to the thing. Null
 * where no act does.
 */
export function actToSettle(plan: Plan, level: Level, report: DetectorReport, rule: string): HintAct | null {
  const detectorId = report.id;
  const subject = openChecks(report).find((check) => check.rule === rule)?.subject ?? null;
  const question = questionOf(rule);
  if (question && subject !== null)
    return { kind: 'show', label: 'Show it', levelId: level.id, ids: [subject], at: null };
  if (question) return questionAct(level.id, question, rule);
  if (rule === 'support') return { kind: 'support', label: 'Say what carries it', levelId: level.id, detectorId };
  if (rule === 'running-machine') return { kind: 'stage', label: 'Look at the house', stage: 'house' };
  if (rule !== 'level') return null;
  if (plan.site.purposeAnswered === false) return PURPOSE_ACT;
  const open = levelsInOrder(plan).find(({ livingAnswered }) => livingAnswered === false);
  return open ? { kind: 'living', label: LIVING_PRESS, levelId: open.id } : null;
}
