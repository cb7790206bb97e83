import { uncheckedLevelEdit } from '../../../geometry/edit/level.ts';
import { withIdentityKept } from '../../../geometry/edit/move.ts';
import { openingsRefusal } from '../../../geometry/messages/refusal.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { currentLevel, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** One drag from press to release: a preview during the drag, one undo step at its end. */
export interface Drag {
  move(point: ToolPoint): void;
  end(point: ToolPoint): void;
  /** Removes the preview. */
  cancel(): void;
}

/** The drag of what is locked: it stays where it is. */
export const NO_DRAG: Drag = { move: () => undefined, end: () => undefined, cancel: () => undefined };

/** Returns a drag that previews `change` of the level at its start, and ends in one undo step or a message of a refusal. */
export function levelDrag(change: (level: Level, point: ToolPoint) => Level): Drag {
  const { plan } = store();
  const start = currentLevel();
  let shown: Plan = plan;
  return {
    move: (point) => {
      shown = uncheckedLevelEdit(plan, start.id, (level) => withIdentityKept(level, change(level, point)));
      store().setPreviewPlan(shown === plan ? null : shown);
    },
    end: () => {
      commitPreview(start, shown);
    },
    cancel: () => store().setPreviewPlan(null),
  };
}

/** Commits a previewed plan. If it is refused, removes the preview and returns the reason, in words; empty on success. */
export function commitPreview(before: Level, shown: Plan): string {
  const level = shown.levels.find(({ id }) => id === before.id);
  const refusal = level ? openingsRefusal(before, level, store().plan.display.length) : '';
  if (!refusal) return store().run(() => shown);
  store().setPreviewPlan(null);
  store().say(refusal);
  return refusal;
}
