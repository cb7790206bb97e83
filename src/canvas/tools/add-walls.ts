import { nextId } from '../../../geometry/plan/edit.ts';
import type { Mm, Plan, Wall } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/snap.ts';
import { withItem } from '../../state/plan-edits.ts';
import { selectModel } from '../../state/selectors.ts';
import { currentLevel, store } from './hand.ts';

/** Puts walls on the level as one step, and says so when a room closed with them. */
export function addWalls(lines: readonly Line[], thickness: Mm): void {
  if (lines.length === 0) return;
  const levelId = currentLevel().id;
  const before = selectModel(store()).rooms.length;
  store().run((plan) => lines.reduce((next, line) => withWall(next, levelId, line, thickness), plan));
  const after = selectModel(store()).rooms.length;
  if (after > before) {
    store().say(
      after - before === 1
        ? 'The room is closed. Say what it is used for.'
        : 'The rooms are closed. Say what they are used for.',
    );
  }
}

function withWall(plan: Plan, levelId: string, [from, to]: Line, thickness: Mm): Plan {
  const wall: Wall = { id: nextId(plan, 'w'), from, to, thickness, side: 'auto' };
  return withItem(plan, levelId, 'walls', wall);
}
