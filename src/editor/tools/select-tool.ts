import type { Handle } from '../../../geometry/edit/reshape.ts';
import type { ShownHandle } from '../../../geometry/edit/spread-handles.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { extentBetween, type Hit, itemsWithin } from '../../../geometry/snap/pick.ts';
import { refuseLocked } from '../../state/locked-detectors.ts';
import { figureAt, lightFigure, roomPromptAt } from '../lengths/figures.ts';
import { openWithRun } from '../lengths/set-out.ts';
import { openLength } from '../lengths/store.ts';
import { openMenuFor } from '../open-menu.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { type Drag, NO_DRAG } from './drag.ts';
import { dragDetector } from './drag-detector.ts';
import { dragHandle } from './drag-handle.ts';
import { dragItems } from './drag-items.ts';
import { dragViewport } from './drag-viewport.ts';
import { handleAt, hitAt } from './pick-at.ts';
import { currentLevel, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** A press becomes a drag at this distance, px: a finger is less steady than a mouse. */
const DRAG_PX = { mouse: 4, touch: 9 } as const;

/** A press that has not ended yet. */
interface Press {
  readonly start: ToolPoint;
  /** The drag, once the press has moved far enough; else null. */
  drag: Drag | null;
  /** What a long press is on: an item, whose menu opens on release, or bare floor, whose checks are shown; null before. */
  long: 'item' | 'floor' | null;
}

/**
 * Selects, moves, reshapes and draws a marquee; on empty ground a finger pans. A long press on an item opens its menu on release; a
 * long press on the floor shows why no detector may be placed there and wherever the finger slides.
 */
export function createSelectTool(): ToolController {
  let press: Press | null = null;
  const settle = () => {
    press = null;
    clearSketch();
  };
  return {
    hover,
    down: (start) => {
      press = { start, drag: null, long: null };
    },
    drag: (point) => {
      if (press) move(press, point);
    },
    hold: (point) => {
      if (press && !press.drag) hold(press, point);
    },
    up: (point) => {
      if (press) release(press, point);
      settle();
    },
    cancel: () => {
      const busy = press !== null && cancelPress(press);
      settle();
      if (busy) return true;
      const { selection, select } = store();
      if (selection.length > 0) select([]);
      return selection.length > 0;
    },
  };
}

function hover(point: ToolPoint): void {
  const handle = handleAt(point);
  if (!handle && lightFigure(point)) {
    store().setHover(null);
    useSketch.setState({ cursor: 'text' });
    return;
  }
  const hit = handle ? undefined : hitAt(point);
  store().setHover({ at: point.plan, id: hit?.id ?? handle?.id ?? null });
  const isPrompt = !handle && !hit && roomPromptAt(point) !== null;
  useSketch.setState({ cursor: isPrompt ? 'pointer' : cursorFor(handle, hit) });
}

function move(press: Press, point: ToolPoint): void {
  if (press.long === 'floor') {
    store().setHover({ at: point.plan, id: null });
    return;
  }
  if (!press.drag) {
    if (farPx(press.start.screen, point.screen) < DRAG_PX[point.touch ? 'touch' : 'mouse']) return;
    store().setHover(null);
    press.drag = beginDrag(press.start);
  }
  press.drag.move(point);
}

function hold(press: Press, point: ToolPoint): void {
  const hit = hitAt(point);
  press.long = hit && hit.list !== 'rooms' ? 'item' : 'floor';
  if (press.long === 'floor') store().setHover({ at: point.plan, id: null });
  // The selection shows that the item is held; a finger that moves on now drags it.
  else if (hit && !store().selection.includes(hit.id)) store().select([hit.id]);
}

function release({ start, drag, long }: Press, point: ToolPoint): void {
  if (long === 'floor') {
    store().setHover(null);
    if (farPx(start.screen, point.screen) < DRAG_PX.touch) openMenuFor(hitAt(point), point);
  } else if (drag) drag.end(point);
  else if (long === 'item') openMenuFor(hitAt(start), point);
  else click(point);
}

/** Cancels what the press has begun. Returns whether it had begun anything. */
function cancelPress({ drag, long }: Press): boolean {
  drag?.cancel();
  if (long === 'floor') store().setHover(null);
  return drag !== null || long === 'floor';
}

function click(point: ToolPoint): void {
  const figure = point.shift || handleAt(point) ? null : figureAt(point);
  if (figure) {
    if (point.touch) openWithRun(figure.subject);
    else openLength(figure.subject, true);
    return;
  }
  const { select, selection, askRoom } = store();
  const hit = hitAt(point);
  const prompt = hit || point.shift ? null : roomPromptAt(point);
  if (prompt || store().roomAsked) askRoom(prompt);
  if (!hit) {
    if (!point.shift) select([]);
    return;
  }
  if (point.shift) select([hit.id], 'toggle');
  else if (selection.length !== 1 || selection[0] !== hit.id) select([hit.id]);
}

/** Returns the drag that starts at a point. By touch a thing must be selected first: a finger that pans may start anywhere. */
function beginDrag(start: ToolPoint): Drag {
  const handle = handleAt(start);
  if (handle) return dragHandle(handle, offsetOf(handle));
  const hit = hitAt(start);
  const { selection, select } = store();
  const chosen = hit !== undefined && selection.includes(hit.id);
  if (!hit || (start.touch && !chosen)) {
    return start.touch ? dragViewport(start) : marquee(start);
  }
  if (!chosen) select(start.shift ? [...selection, hit.id] : [hit.id]);
  const ids = store().selection;
  if (refuseLocked(store(), ids)) return start.touch ? dragViewport(start) : NO_DRAG;
  return hit.list === 'detectors' && ids.length === 1 ? dragDetector(hit.id, start) : dragItems(ids, start);
}

const offsetOf = ({ at, shownAt }: ShownHandle): XY => [at[0] - shownAt[0], at[1] - shownAt[1]];

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
