import type { Look } from '../../../../geometry/edit/index.ts';
import type { ConditionState } from '../../../../geometry/plan/test-record.ts';
import { conditionsReport } from '../../../protocol/conditions/conditions-report.ts';
import { withAnswer, withLook } from '../../../protocol/conditions/edit-conditions.ts';
import { useAppStore } from '../../../state/store.ts';

const NOBODY: Look = { by: '', at: null };

/** Answers a condition as one step of history, with name and time of the walk, and shows the consequence of a broken one. */
export function answer(id: string, state: ConditionState): void {
  const { run, say, plan } = useAppStore.getState();
  const before = rowOf(id)?.answered;
  const look = state === 'unknown' ? NOBODY : useAppStore.getState().walk;
  if (run((now) => withAnswer(now, id, state, look))) return;
  const row = rowOf(id);
  if (row?.state === 'broken') say(`${row.item.name}: ${row.text}`);
  else if (row && before === 'broken' && plan.visit.start !== null) say(`${row.item.name}: ${BREAK_GONE}`);
}

const BREAK_GONE =
  'the deviation is withdrawn. If it happened during the test, leave it as not met and record in the note when it was corrected.';

/** Adds name and time of the walk to the answers that lack them, as one step of history. */
export function signAnswers(): void {
  useAppStore.getState().run((plan) => withLook(plan, useAppStore.getState().walk));
}

const rowOf = (id: string) => conditionsReport(useAppStore.getState().plan).rows.find(({ item }) => item.id === id);
