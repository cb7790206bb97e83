import { nextId } from '../../geometry/edit/index.ts';
import { uncheckedLevelEdit } from '../../geometry/edit/level.ts';
import { mendedGap } from '../../geometry/edit/mend-gap.ts';
import { mergedWalls } from '../../geometry/edit/merge-walls.ts';
import { withWallSplit, withWallsJoined } from '../../geometry/edit/split-join.ts';
import { type ThicknessEdit, wallsThick } from '../../geometry/edit/thickness-edit.ts';
import type { LevelEdit } from '../../geometry/edit/wall-edit.ts';
import type { LevelModel, Notice } from '../../geometry/level/types.ts';
import { describeThicknessChanges } from '../../geometry/messages/thickness-changed.ts';
import type { Level, Mm, Plan } from '../../geometry/plan/model.ts';
import { selectModel } from './selectors.ts';
import { useAppStore } from './store.ts';

/** Changes the level in view as one step of history. Returns the reason of a refusal, in words; empty on success. */
export function editLevel(edit: (model: LevelModel, unit: Plan['display']['length'], plan: Plan) => LevelEdit): string {
  const state = useAppStore.getState();
  const model = selectModel(state);
  const result = edit(model, state.plan.display.length, state.plan);
  if (!result.ok) return result.reason;
  return state.run((plan) => uncheckedLevelEdit(plan, model.level.id, (): Level => result.level));
}

/**
 * Sets the thickness of walls of the level in view, mm, as one step of history; faces that were taped keep their places where possible.
 * Shows a message that says what stays and what moves. Returns the reason of a refusal, in words; empty on success.
 */
export function setThickness(ids: readonly string[], thickness: Mm): string {
  const { wallSettings, plan } = useAppStore.getState();
  const unit = plan.display.length;
  let changes: ThicknessEdit['changes'] = [];
  const refusal = editLevel((model) => {
    const edit = wallsThick(model, ids, thickness, wallSettings.by, unit);
    changes = edit.changes;
    return { ok: true, level: edit.level };
  });
  if (refusal) return refusal;
  // The message already holds remarks on side effects of the edit.
  const { message, say } = useAppStore.getState();
  say([describeThicknessChanges(changes, unit), message].filter(Boolean).join(' '));
  return '';
}

/** Splits a wall `at` mm from its `from` end; the part before stays selected. Shows a message of the result. */
export function splitWall(id: string, at: Mm): void {
  const refusal = editLevel(({ level }, unit, plan) => withWallSplit(level, id, at, nextId(plan, 'w'), unit));
  settle(id, refusal || 'The wall is two now. Each can be moved and corrected alone.');
}

/** Joins two walls that are in line, and selects the one wall. Shows a message of the result. */
export function joinWalls(id: string, otherId: string): void {
  const refusal = editLevel(({ level }, unit) => withWallsJoined(level, id, otherId, unit));
  settle(id, refusal || 'The two walls are one now.');
}

/** Merges two walls that lie on one another, and selects the one wall. Shows a message of the result. */
export function makeOneWall(id: string, otherId: string): void {
  const refusal = editLevel(({ level }, unit, plan) => mergedWalls(level, [id, otherId], nextId(plan, 'w'), unit));
  const { levels } = useAppStore.getState().plan;
  const stays = [id, otherId].find((each) => levels.some(({ walls }) => walls.some((wall) => wall.id === each)));
  settle(stays ?? id, refusal || 'The walls are one now. Undo restores both.');
}

/** Joins the walls of a notice, or cuts one back to the other, and says so. */
export function mendGap(notice: Notice): void {
  const refusal = editLevel(({ level }, unit) => mendedGap(level, notice, unit));
  const words = notice.kind === 'overshoot' ? 'The wall ends at the other one now.' : 'The walls are joined now.';
  useAppStore.getState().say(refusal || words);
}

function settle(id: string, words: string): void {
  useAppStore.getState().select([id]);
  useAppStore.getState().say(words);
}
