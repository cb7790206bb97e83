import type { Condition, Plan } from '../../../geometry/plan/model.ts';
import { answerFor } from './report.ts';

type Answer = Partial<Omit<Condition, 'item'>>;

/** The plan with the answer for an item changed: one entry an item, in its old place or at the end. Answers of the same item that a file had beside it go. */
export function withCondition(plan: Plan, id: string, change: Answer): Plan {
  const before = answerFor(plan, id) ?? { item: id, state: 'unknown', at: null, note: '' };
  const after: Condition = { ...before, ...change };
  const place = plan.conditions.findIndex(({ item }) => item === id);
  const rest = plan.conditions.filter(({ item }) => item !== id);
  const index = place < 0 ? rest.length : plan.conditions.slice(0, place).filter(({ item }) => item !== id).length;
  return { ...plan, conditions: [...rest.slice(0, index), after, ...rest.slice(index)] };
}
