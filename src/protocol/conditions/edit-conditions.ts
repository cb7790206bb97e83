import type { Look } from '../../../geometry/edit/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Condition, ConditionState } from '../../../geometry/plan/test-record.ts';
import { HOUR, msOf } from '../timing/clock.ts';
import { furtherAnswers, recordedCondition } from './conditions-report.ts';

type Answer = Partial<Omit<Condition, 'item'>>;

/**
 * Answers at least this far apart, ms, are from two inspections, e.g. at the placement and at the pick-up; a later answer of the same
 * inspection corrects the earlier one. Common practice, no published source.
 */
const ANOTHER_INSPECTION = 12 * HOUR;

/**
 * Returns the plan with the answer to an item changed, at its former index or at the end. Of the further answers to the item, only those
 * of earlier inspections are kept.
 */
export function withCondition(plan: Plan, id: string, change: Answer): Plan {
  const counts = recordedCondition(plan, id);
  const before = counts ?? { item: id, state: 'unknown', at: null, note: '' };
  return withEntry(plan, { ...before, ...change }, counts);
}

function withEntry(plan: Plan, entry: Condition, replaced: Condition | undefined): Plan {
  const goes = (each: Condition) =>
    each.item === entry.item && (each === replaced || !isOfEarlierInspection(each, entry));
  const place = plan.conditions.findIndex(goes);
  const rest = plan.conditions.filter((each) => !goes(each));
  const index = place < 0 ? rest.length : plan.conditions.slice(0, place).filter((each) => !goes(each)).length;
  return { ...plan, conditions: [...rest.slice(0, index), entry, ...rest.slice(index)] };
}

/**
 * Whether an answer is kept beside a later one. A deviation is not: a new answer withdraws it. "Not applicable" is not either: it is true
 * of the house at any time or never.
 */
function isOfEarlierInspection(before: Condition, { state, at }: Condition): boolean {
  const [then, now] = [msOf(before.at), msOf(at)];
  if (before.state !== 'kept' || (state !== 'kept' && state !== 'broken')) return false;
  return then !== null && now !== null && now - then >= ANOTHER_INSPECTION;
}

/**
 * Returns the plan with a new answer to an item. Observer and time are those of this inspection only: an earlier observer did not see the
 * new state. A note stays with its answer, or moves to the answer that replaces it. "unknown" withdraws the answer that counts; an answer
 * of an earlier inspection then counts again.
 */
export function withAnswer(plan: Plan, id: string, state: ConditionState, { by, at }: Look): Plan {
  const counts = recordedCondition(plan, id);
  if (state === 'unknown' && furtherAnswers(plan, id).length > 0)
    return { ...plan, conditions: plan.conditions.filter((each) => each !== counts) };
  const name = by.trim();
  const answer: Condition = { item: id, state, at, note: '', ...(name ? { by: name } : {}) };
  if (!counts || isOfEarlierInspection(counts, answer)) return withEntry(plan, answer, undefined);
  const { by: _before, ...rest } = counts;
  return withEntry(plan, { ...rest, ...answer, note: counts.note }, counts);
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
