import { withNoneHere } from '../../geometry/edit/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { instantText, type Ms } from '../protocol/timing/clock.ts';
import { answersOf, GROUP_IDS, type GroupId, withAnswers } from './answers.ts';
import type { QuickCard } from './describe-card.ts';
import { GROUPS } from './things.ts';

const isGroup = (rule: string): rule is GroupId => (GROUP_IDS as readonly string[]).includes(rule);

/** Returns what a person can say about an open point of a card, in the first person's words; null where only other answers help. */
export function openAnswer(rule: string): string | null {
  if (rule === 'direct-sun') return 'I looked: no direct sun reaches the spot';
  return isGroup(rule) ? `I looked: no ${GROUPS[rule].words} on this floor` : null;
}

/** Returns the plan of a card with an open point answered, at `now`. */
export function withOpenAnswered(plan: Plan, { level }: QuickCard, rule: string, now: Ms): Plan {
  const look = { by: '', at: instantText(now, plan.site.timeZone) };
  const recorded = !isGroup(rule) || GROUPS[rule].rule !== null ? withNoneHere(plan, level.id, rule, look) : plan;
  const answers = answersOf(plan);
  if (!answers || !isGroup(rule)) return recorded;
  return withAnswers(recorded, { ...answers, none: [...new Set([...answers.none, rule])] });
}
