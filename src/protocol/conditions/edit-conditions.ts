import type { Look } from '../../../geometry/edit/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Condition, ConditionState } from '../../../geometry/plan/test-record.ts';
import { recordedCondition } from './conditions-report.ts';

type Answer = Partial<Omit<Condition, 'item'>>;

/** Returns the plan with the answer to an item changed, at its former index or at the end. Further answers to the item are removed. */
export function withCondition(plan: Plan, id: string, change: Answer): Plan {
  const before = recordedCondition(plan, id) ?? { item: id, state: 'unknown', at: null, note: '' };
  return withEntry(plan, { ...before, ...change });
}

function withEntry(plan: Plan, entry: Condition): Plan {
  const place = plan.conditions.findIndex(({ item }) => item === entry.item);
  const rest = plan.conditions.filter(({ item }) => item !== entry.item);
  const index =
    place < 0 ? rest.length : plan.conditions.slice(0, place).filter(({ item }) => item !== entry.item).length;
  return { ...plan, conditions: [...rest.slice(0, index), entry, ...rest.slice(index)] };
}

/**
 * Returns the plan with a new answer to an item. Observer and time are those of this inspection only: an earlier observer did not see the
 * new state. The note stays.
 */
export function withAnswer(plan: Plan, id: string, state: ConditionState, { by, at }: Look): Plan {
  const { by: _before, ...before } = recordedCondition(plan, id) ?? { item: id, note: '' };
  const name = by.trim();
  const after: Condition = { ...before, state, at, ...(name ? { by: name } : {}) };
  return withEntry(plan, after);
}

/** Returns the plan with observer and time of an inspection filled in where an answer has none. No answer changes. */
export function withLook(plan: Plan, { by, at }: Look): Plan {
  const name = by.trim();
  const conditions = plan.conditions.map((each): Condition => {
    if (each.state === 'unknown') return each;
    const named = name && !each.by?.trim() ? { by: name } : {};
    return { ...each, ...named, at: each.at ?? at };
  });
  return { ...plan, conditions };
}
