import { type Handle, handlesOf } from '../../../geometry/edit/reshape.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { extentBetween, type Hit, hitsAt, itemsWithin } from '../../../geometry/snap/pick.ts';
import { figureAt, lightFigure } from '../lengths/figures.ts';
import { openLength } from '../lengths/store.ts';
import { openMenuFor } from '../open-menu.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import type { Drag } from './drag.ts';
import { dragDetector } from './drag-detector.ts';
import { dragHandle } from './drag-handle.ts';
import { dragItems } from './drag-items.ts';
import { dragViewport } from './drag-viewport.ts';
import { currentLevel, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** A press becomes a drag from this distance on, px: a finger is less steady than a mouse. */
const DRAG_PX = { mouse: 4, touch: 9 } as const;

/**
 * Selects, moves, reshapes and draws a marquee; on empty ground a finger pans. A long press on an item opens its menu on release; a
 * long press on the floor tells why no detector may sit there and wherever the finger slides.
 */
export function createSelectTool(): ToolController {
  let pressed: ToolPoint | null = null;
  let drag: Drag | null = null;
  let reading = false;
  let held = false;

  const settle = () => {
    pressed = null;
    drag = null;
    reading = false;
    held = false;
    clearSketch();
  };
  return {
    hover: (point) => {
      const handle = handleAt(point);
      if (!handle && lightFigure(point)) {
        store().setHover(null);
        useSketch.setState({ cursor: 'text' });
        return;
      }
      const hit = handle ? undefined : hitAt(point);
      store().setHover({ at: point.plan, id: hit?.id ?? handle?.id ?? null });
      useSketch.setState({ cursor: cursorFor(handle, hit) });
    },
    down: (point) => {
      pressed = point;
    },
    drag: (point) => {
      if (!pressed) return;
      if (reading) {
        store().setHover({ at: point.plan, id: null });
        return;
      }
      if (!drag) {
        if (farPx(pressed.screen, point.screen) < DRAG_PX[point.touch ? 'touch' : 'mouse']) return;
        store().setHover(null);
        drag = beginDrag(pressed);
      }
      drag.move(point);
    },
    hold: (point) => {
      if (!pressed || drag) return;
      const hit = hitAt(point);
      held = true;
      reading = !hit || hit.list === 'rooms';
      if (reading) store().setHover({ at: point.plan, id: null });
      // It shows that it is held; a finger that goes on now moves it.
      else if (hit && !store().selection.includes(hit.id)) store().select([hit.id]);
    },
    up: (point) => {
      if (reading && pressed) {
        store().setHover(null);
        if (farPx(pressed.screen, point.screen) < DRAG_PX.touch) openMenuFor(hitAt(point), point);
      } else if (drag) drag.end(point);
      else if (held && pressed) openMenuFor(hitAt(pressed), point);
      else if (pressed) press(point);
      settle();
    },
    cancel: () => {
      const busy = drag !== null || reading;
      drag?.cancel();
      if (reading) store().setHover(null);
      settle();
      if (busy) return true;
      const { selection, select } = store();
      if (selection.length > 0) select([]);
      return selection.length > 0;
    },
  };
}

function press(point: ToolPoint): void {
  const figure = point.shift || handleAt(point) ? null : figureAt(point);
  if (figure) {
    openLength(figure.subject, true);
    return;
  }
  const { select, selection } = store();
  const hit = hitAt(point);
  if (!hit) {
    if (!point.shift) select([]);
    return;
  }
  if (point.shift) select([hit.id], 'toggle');
  else if (selection.length !== 1 || selection[0] !== hit.id) select([hit.id]);
}

/** Returns the drag that starts at a point. By touch a wall, door or thing must be selected first: a finger that pans may start anywhere. */
function beginDrag(start: ToolPoint): Drag {
  const handle = handleAt(start);
  if (handle) return dragHandle(handle);
  const hit = hitAt(start);
  const { selection, select } = store();
  const chosen = hit !== undefined && selection.includes(hit.id);
  if (!hit || (start.touch && !chosen && hit.list !== 'detectors')) {
    return start.touch ? dragViewport(start) : marquee(start);
  }
  if (!chosen) select(start.shift ? [...selection, hit.id] : [hit.id]);
  const ids = store().selection;
  return hit.list === 'detectors' && ids.length === 1 ? dragDetector(hit.id, start) : dragItems(ids, start);
}

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

function marquee(start: ToolPoint): Drag {
  return {
    move: (point) => useSketch.setState({ marquee: [start.plan, point.plan] }),
    end: (point) => {
      const found = itemsWithin(currentLevel(), extentBetween(start.plan, point.plan));
      const { selection, select } = store();
      select(start.shift ? [...new Set([...selection, ...found])] : found);
    },
    cancel: () => undefined,
  };
}

function cursorFor(handle: Handle | null, hit: Hit | undefined): string {
  if (handle) return handle.kind === 'turn' || handle.kind === 'stream' ? 'grab' : 'crosshair';
  if (!hit) return 'default';
  return hit.list === 'detectors' ? 'grab' : 'move';
}

function farPx(a: XY, b: XY): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
