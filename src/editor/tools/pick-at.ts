import { handlesOf } from '../../../geometry/edit/reshape.ts';
import { type ShownHandle, spreadHandles } from '../../../geometry/edit/spread-handles.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { type Hit, hitsAt } from '../../../geometry/snap/pick.ts';
import { isMainlyTouch } from '../../theme/target-size.ts';
import { currentLevel, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** Distance of the rotation handle from its box, px. */
const HANDLE_OFF_PX = 28;
/** Least distance between two handles, px: the least target of a pointer (WCAG 2.2, 2.5.8), or that of a finger. */
const HANDLE_GAP_PX = { mouse: 24, touch: 44 } as const;
/** A press within this distance of a handle takes it, px. */
const HANDLE_REACH_PX = { mouse: 12, touch: 22 } as const;

/** Returns the handles of the selected item with the places where they are shown; none if several items or nothing is selected. */
export function shownHandles(level: Level, selection: readonly string[], scale: number): readonly ShownHandle[] {
  const [id] = selection;
  if (!id || selection.length !== 1) return [];
  // By the device, so that the gap of handles does not change from press to press.
  const gap = HANDLE_GAP_PX[isMainlyTouch() ? 'touch' : 'mouse'];
  return spreadHandles(handlesOf(level, id, HANDLE_OFF_PX / scale), gap / scale);
}

/** Returns the nearest handle of the selected item within reach of a point; null for none. @param wide multiple of the usual reach */
export function handleAt(point: ToolPoint, wide = 1): ShownHandle | null {
  const { selection, viewport } = store();
  let best: ShownHandle | null = null;
  let least = (HANDLE_REACH_PX[point.touch ? 'touch' : 'mouse'] / viewport.scale) * wide;
  for (const handle of shownHandles(currentLevel(), selection, viewport.scale)) {
    const far = distance(handle.shownAt, point.plan);
    if (far <= least) {
      least = far;
      best = handle;
    }
  }
  return best;
}

/** Returns the item at a point. Where items overlap, a selected one comes first, so that a drag moves it. */
export function hitAt(point: ToolPoint): Hit | undefined {
  const hits = hitsAt(currentLevel(), point.plan, point.reach);
  const { selection } = store();
  return hits.find(({ id }) => selection.includes(id)) ?? hits[0];
}
