import { type Handle, handlesOf } from '../../../geometry/edit/reshape.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { type Hit, hitsAt } from '../../../geometry/snap/pick.ts';
import { currentLevel, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** Returns the nearest handle of the selected item within `wide` times the reach of a point; null for none. */
export function handleAt(point: ToolPoint, wide = 1.3): Handle | null {
  const { selection, viewport } = store();
  const [id] = selection;
  if (!id || selection.length !== 1) return null;
  const handles = handlesOf(currentLevel(), id, HANDLE_OFF_PX / viewport.scale);
  let best: Handle | null = null;
  let least = point.reach * wide;
  for (const handle of handles) {
    const far = distance(handle.at, point.plan);
    if (far <= least) {
      least = far;
      best = handle;
    }
  }
  return best;
}

/** Distance of the rotation handle from its box, px. */
export const HANDLE_OFF_PX = 28;

/** Returns the item at a point. Where items overlap, a selected one comes first, so that a drag goes on with it. */
export function hitAt(point: ToolPoint): Hit | undefined {
  const hits = hitsAt(currentLevel(), point.plan, point.reach);
  const { selection } = store();
  return hits.find(({ id }) => selection.includes(id)) ?? hits[0];
}
