import { useDeferredValue, useMemo } from 'react';
import { levelPicture } from '../../report/level-picture.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';

/** The level in view as a small decorative picture. The text of the page has the same information. */
export function PlanThumbnail() {
  const plan = useDeferredValue(useAppStore((state) => state.plan));
  const levelId = useDeferredValue(useAppStore((state) => selectLevel(state).id));
  const picture = useMemo(() => {
    const known = plan.levels.some(({ id }) => id === levelId);
    return known ? levelPicture(plan, levelId) : '';
  }, [plan, levelId]);
  if (!picture) return null;
  return (
    <img
      className="plan-thumbnail"
      src={`data:image/svg+xml,${encodeURIComponent(picture)}`}
      alt=""
      draggable={false}
    />
  );
}
