import { create } from 'zustand';
import type { ConditionState } from '../../../geometry/plan/model.ts';
import { withCondition } from '../../job/conditions/edit.ts';
import { conditionsReport } from '../../job/conditions/report.ts';
import { useAppStore } from '../../state/store.ts';

/** Who walks through the house and when: goes onto every answer that is given meanwhile. Never in the plan by itself. */
export const useWalk = create<{ readonly by: string; readonly at: string | null }>()(() => ({ by: '', at: null }));

/** Answers an item as one step, with who and when of the walk, and says at once what a break means. */
export function answer(id: string, state: ConditionState): void {
  const { run, say } = useAppStore.getState();
  const { by, at } = useWalk.getState();
  const who = by.trim() ? { by: by.trim() } : {};
  if (run((plan) => withCondition(plan, id, { state, ...who, ...(at ? { at } : {}) }))) return;
  const row = conditionsReport(useAppStore.getState().plan).rows.find(({ item }) => item.id === id);
  if (row?.state === 'broken') say(`${row.item.name}: ${row.says}`);
}
