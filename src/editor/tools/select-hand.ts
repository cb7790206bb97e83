import { type Handle, handlesOf } from '../../../geometry/edit/reshape.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { extentBetween, type Hit, hitsAt, itemsWithin } from '../../../geometry/snap/pick.ts';
import { figureAt, lightFigure } from '../lengths/figures.ts';
import { openLength } from '../lengths/store.ts';
import { openMenuFor } from '../open-menu.ts';
import { clearSketch, useSketch } from '../sketch.ts';
import { carryDetector } from './carry-detector.ts';
import type { Drag } from './drag.ts';
import { currentLevel, type Hand, type Point, store } from './hand.ts';
import { moveItems } from './move-items.ts';
import { panSheet } from './pan-sheet.ts';
import { pullHandle } from './pull-handle.ts';

/** A press turns into a drag when it has gone this far, px: a finger is less steady than a mouse. */
const DRAG_PX = { mouse: 4, touch: 9 } as const;

/**
 * Selecting, moving, reshaping; a frame around things; on open paper a finger moves the sheet. Held on a thing and let go it opens
 * what can be done with it; held on the floor it is told what keeps a detector away, there and wherever it slides.
 */
export function createSelectHand(): Hand {
  let pressed: Point | null = null;
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

function press(point: Point): void {
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

/** What a pull from this point moves. Under a finger a wall, door or thing must be selected first: a finger that pans may start anywhere. */
function beginDrag(start: Point): Drag {
  const handle = handleAt(start);
  if (handle) return pullHandle(handle);
  const hit = hitAt(start);
  const { selection, select } = store();
  const chosen = hit !== undefined && selection.includes(hit.id);
  if (!hit || (start.touch && !chosen && hit.list !== 'detectors')) {
    return start.touch ? panSheet(start) : marquee(start);
  }
  if (!chosen) select(start.shift ? [...selection, hit.id] : [hit.id]);
  const ids = store().selection;
  return hit.list === 'detectors' && ids.length === 1 ? carryDetector(hit.id, start) : moveItems(ids, start);
}

/** The grip of what is selected that is nearest to a point, if one is near. @param wide how many times a press's reach counts as near */
export function handleAt(point: Point, wide = 1.3): Handle | null {
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

/** How far the turning grip stands off its box, px. */
export const HANDLE_OFF_PX = 28;

/** What is selected comes first where things lie on one another, so that a drag goes on with what is in hand. */
export function hitAt(point: Point): Hit | undefined {
  const hits = hitsAt(currentLevel(), point.plan, point.reach);
  const { selection } = store();
  return hits.find(({ id }) => selection.includes(id)) ?? hits[0];
}

function marquee(start: Point): Drag {
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
