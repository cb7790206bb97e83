import { movedItems } from '../../geometry/edit/index.ts';
import { moveToFace } from './edit-remarks.ts';
import { useAppStore } from './store.ts';

/** Moves a thing that reaches into a wall to the wall's face, as one step of history, and selects it. */
export function setAtWall(levelId: string, id: string): void {
  const { plan, run, select } = useAppStore.getState();
  const way = moveToFace(plan, levelId, id);
  if (!way) return;
  run((now) => movedItems(now, levelId, [id], ...way));
  select([id]);
}
