import { settled } from '../../../geometry/edit/move.ts';
import { openingsRefusal } from '../../../geometry/messages/refusal.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { withLevel } from '../../state/plan-edits.ts';
import { currentLevel, type Point, store } from './hand.ts';

/** One pull from press to release: shown as a draft on the way, one step of history at its end. */
export interface Drag {
  move(point: Point): void;
  end(point: Point): void;
  /** Everything as it was. */
  cancel(): void;
}

/** A drag that shows the level as `change` makes it of the level at its start, and ends in one step or a refusal in words. */
export function levelDrag(change: (level: Level, point: Point) => Level): Drag {
  const { plan } = store();
  const start = currentLevel();
  let shown: Plan = plan;
  return {
    move: (point) => {
      shown = withLevel(plan, start.id, (level) => settled(level, change(level, point)));
      store().setDraft(shown === plan ? null : shown);
    },
    end: () => {
      commitDraft(start, shown);
    },
    cancel: () => store().setDraft(null),
  };
}

/** Makes what was shown the plan; or takes it back, says why and answers it. Empty when it was done. */
export function commitDraft(before: Level, shown: Plan): string {
  const level = shown.levels.find(({ id }) => id === before.id);
  const refusal = level ? openingsRefusal(before, level, store().plan.display.length) : '';
  if (!refusal) return store().run(() => shown);
  store().setDraft(null);
  store().say(refusal);
  return refusal;
}
