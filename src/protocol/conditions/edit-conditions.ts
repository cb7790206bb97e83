import type { Look } from '../../../geometry/edit/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Condition, ConditionState } from '../../../geometry/plan/test-record.ts';
import type { ConditionRow } from './condition-row.ts';
import { recordedCondition } from './conditions-report.ts';

type Answer = Partial<Omit<Condition, 'item'>>;

/** The plan with the answer for an item changed: one entry an item, in its old place or at the end. Answers of the same item that a file had beside it go. */
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
 * The plan with an item answered anew. Who and when are those of this look only: a name and a time of an earlier one would vouch for
 * what they never saw. The note stays.
 */
export function withAnswer(plan: Plan, id: string, state: ConditionState, { by, at }: Look): Plan {
  const { by: _before, ...before } = recordedCondition(plan, id) ?? { item: id, note: '' };
  const name = by.trim();
  const after: Condition = { ...before, state, at, ...(name ? { by: name } : {}) };
  return withEntry(plan, after);
}

/** Whether an answer that stands was given without who gave it, or without when. */
export const lacksObserverOrTime = ({
  state,
  answered,
  by,
  at,
}: Pick<ConditionRow, 'state' | 'answered' | 'by' | 'at'>): boolean =>
  answered !== 'unknown' && state === answered && (by === '' || at === null);

/** The plan with who and when of a look put where an answer has none. What is written down already stays; nothing is answered by it. */
export function withLook(plan: Plan, { by, at }: Look): Plan {
  const name = by.trim();
  const conditions = plan.conditions.map((each): Condition => {
    if (each.state === 'unknown') return each;
    const named = name && !each.by?.trim() ? { by: name } : {};
    return { ...each, ...named, at: each.at ?? at };
  });
  return { ...plan, conditions };
}
