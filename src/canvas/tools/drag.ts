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

/** A drag that shows the level as `change` makes it of the level at its start. */
export function levelDrag(change: (level: Level, point: Point) => Level, after?: (level: Level) => string): Drag {
  const { plan } = store();
  const levelId = currentLevel().id;
  let shown: Plan = plan;
  return {
    move: (point) => {
      shown = withLevel(plan, levelId, (level) => change(level, point));
      store().setDraft(shown === plan ? null : shown);
    },
    end: () => {
      const level = shown.levels.find(({ id }) => id === levelId);
      const refusal = (level && after?.(level)) ?? '';
      if (refusal) store().setDraft(null);
      else if (shown !== plan) store().run(() => shown);
      store().say(refusal);
    },
    cancel: () => store().setDraft(null),
  };
}
