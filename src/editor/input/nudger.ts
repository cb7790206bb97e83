import { uncheckedLevelEdit } from '../../../geometry/edit/level.ts';
import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import type { Plan, XY } from '../../../geometry/plan/model.ts';
import { refuseLocked } from '../../state/locked-detectors.ts';
import { selectLevel } from '../../state/selectors.ts';
import { commitPreview } from '../tools/drag.ts';
import { store } from '../tools/tool-context.ts';
import { stepFor } from './sheet-keys.ts';

/** Moves the selection by arrow keys. A held arrow is one step of history, which ends when the key is released. */
interface Nudger {
  /** Returns false where nothing is selected. */
  move(arrow: XY, event: KeyboardEvent): boolean;
  /** Ends the step and commits it to the plan. */
  settle(): void;
}

function createNudger(): Nudger {
  let start: Plan | null = null;
  let by: XY = [0, 0];
  const settle = () => {
    const { previewPlan } = store();
    const from = start;
    start = null;
    by = [0, 0];
    if (!from || !previewPlan) return;
    const before = from.levels.find(({ id }) => id === selectLevel(store()).id);
    if (before) commitPreview(before, previewPlan);
  };
  return {
    move: ([dx, dy], event) => {
      const { selection, plan, previewPlan } = store();
      if (selection.length === 0) return false;
      if (refuseLocked(store(), selection)) return true;
      // Starts again if something else, such as an undo or a drag, has changed the plan meanwhile.
      if (start !== plan || !previewPlan) by = [0, 0];
      start = plan;
      const step = stepFor(event);
      by = [by[0] + dx * step, by[1] + dy * step];
      const levelId = selectLevel(store()).id;
      store().setPreviewPlan(
        uncheckedLevelEdit(plan, levelId, (level) => withItemsMoved(level, new Set(selection), by)),
      );
      return true;
    },
    settle,
  };
}

export const nudger = createNudger();
