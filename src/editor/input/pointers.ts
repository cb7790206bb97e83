import type { XY } from '../../../geometry/plan/model.ts';
import { pannedBy, toPlan, zoomedAt } from '../../state/viewport.ts';
import { openMenuFor } from '../open-menu.ts';
import { useSketch } from '../overlay/sketch.ts';
import { cancelInNextFrame, flushInput, inNextFrame } from '../stage/frame-loop.ts';
import { hitAt } from '../tools/select-tool.ts';
import { store } from '../tools/tool-context.ts';
import type { ToolController, ToolPoint } from '../tools/tool-controller.ts';

/** How near the pointer must be to count as on a thing, px. */
const REACH_PX = { mouse: 9, touch: 20 } as const;
/** A press by finger or pen that lasts so long, ms, and moves no further than this, px, is a long press. */
const HOLD = { ms: 500, px: 9 } as const;
/** One notch of the wheel (100 px in most browsers) zooms by a quarter. */
const WHEEL_ZOOM = Math.log(1.25) / 100;
/** A pinch on a touchpad comes in steps a tenth as large as a wheel's. */
const PINCH_ON_PAD = 6;

/**
 * Adds one set of listeners for the whole sheet: one pointer works the active tool, two fingers or the middle button pan, the wheel
 * zooms. Returns what removes them.
 */
export function listenToPointers(
  element: HTMLElement,
  controller: () => ToolController,
  isPanning: () => boolean,
): () => void {
  const down = new Map<number, XY>();
  let panFrom: XY | null = null;
  let working = false;
  /** The stylus that is down: what else touches the sheet meanwhile is the palm. */
  let stylus: number | null = null;
  let holdTimer: ReturnType<typeof setTimeout> | undefined;
  let heldFrom: XY | null = null;
  let moved: PointerEvent | null = null;

  const screenOf = (event: { clientX: number; clientY: number }): XY => {
    const { left, top } = element.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  };
  const pointOf = (event: PointerEvent): ToolPoint => {
    const screen = screenOf(event);
    const { viewport, snap } = store();
    const touch = event.pointerType === 'touch';
    return {
      plan: toPlan(viewport, screen),
      screen,
      shift: event.shiftKey,
      free: !snap || event.altKey,
      touch,
      reach: REACH_PX[touch ? 'touch' : 'mouse'] / viewport.scale,
    };
  };
  const endHold = () => {
    clearTimeout(holdTimer);
    heldFrom = null;
  };
  const beginHold = (event: PointerEvent, screen: XY) => {
    heldFrom = screen;
    holdTimer = setTimeout(() => {
      heldFrom = null;
      if (working) controller().hold?.(pointOf(event));
    }, HOLD.ms);
  };
  const isPalm = (event: PointerEvent) => stylus !== null && event.pointerType === 'touch';
  const giveUp = () => {
    endHold();
    const tool = controller();
    if (working && tool.interrupt) tool.interrupt();
    else if (working) tool.cancel();
    working = false;
  };

  const onDown = (event: PointerEvent) => {
    flushInput(follow);
    // Fields and buttons that lie on the sheet keep their presses.
    if (event.target instanceof Element && event.target.closest('.length-box, button')) return;
    if (isPalm(event)) return;
    if (event.pointerType === 'pen') {
      // The palm came down before the stylus: what it began is given up.
      if (down.size > 0) giveUp();
      down.clear();
      stylus = event.pointerId;
    }
    element.setPointerCapture(event.pointerId);
    const screen = screenOf(event);
    down.set(event.pointerId, screen);
    if (down.size === 2) {
      giveUp();
      return;
    }
    if (down.size > 2) return;
    if (event.button === 1 || (event.button === 0 && isPanning())) {
      panFrom = screen;
      event.preventDefault();
      return;
    }
    if (event.button !== 0) return;
    working = true;
    const point = pointOf(event);
    useSketch.setState({ pointer: point.plan, touch: point.touch, cross: null });
    controller().down(point);
    if (event.pointerType !== 'mouse') beginHold(event, screen);
  };
  const onMove = (event: PointerEvent) => {
    const screen = screenOf(event);
    const before = down.get(event.pointerId);
    if (before) down.set(event.pointerId, screen);
    // A palm, or a finger whose press was given up.
    if (!before && event.pointerType === 'touch') return;
    if (heldFrom && Math.hypot(screen[0] - heldFrom[0], screen[1] - heldFrom[1]) > HOLD.px) endHold();
    if (down.size === 2 && before) {
      pinch(down, event.pointerId, before);
      return;
    }
    moved = event;
    inNextFrame('input', follow);
  };
  /** A mouse sends more moves than frames are shown: only the last one before a frame is followed. */
  const follow = () => {
    const event = moved;
    moved = null;
    if (!event) return;
    if (panFrom) {
      const screen = screenOf(event);
      store().setViewport(pannedBy(store().viewport, screen[0] - panFrom[0], screen[1] - panFrom[1]));
      panFrom = screen;
      return;
    }
    const point = pointOf(event);
    useSketch.setState({ pointer: point.plan, touch: point.touch, cross: null });
    if (working) controller().drag(point);
    else if (event.pointerType !== 'touch') controller().hover(point);
  };
  const onUp = (event: PointerEvent) => {
    flushInput(follow);
    if (stylus === event.pointerId) stylus = null;
    if (!down.delete(event.pointerId)) return;
    panFrom = null;
    endHold();
    if (!working) return;
    working = false;
    controller().up(pointOf(event));
    if (event.pointerType === 'touch') useSketch.setState({ pointer: null });
  };
  const onCancel = (event: PointerEvent) => {
    flushInput(follow);
    if (stylus === event.pointerId) stylus = null;
    if (!down.delete(event.pointerId)) return;
    panFrom = null;
    giveUp();
  };
  const onLeave = () => {
    flushInput(follow);
    if (working) return;
    useSketch.setState({ pointer: null });
    store().setHover(null);
  };
  const onWheel = (event: WheelEvent) => {
    event.preventDefault();
    flushInput(follow);
    const { viewport, setViewport } = store();
    const lines = event.deltaMode === 1 ? 30 : 1;
    if (isWheel(event)) {
      const factor = Math.exp(-event.deltaY * lines * WHEEL_ZOOM * (event.ctrlKey ? PINCH_ON_PAD : 1));
      setViewport(zoomedAt(viewport, screenOf(event), factor));
    } else {
      setViewport(pannedBy(viewport, -event.deltaX * lines, -event.deltaY * lines));
    }
  };

  /** By mouse or the button of a stylus; a finger's long press is timed by `beginHold`, keys are commands. */
  const onContextMenu = (event: MouseEvent) => {
    event.preventDefault();
    if (event.target instanceof Element && event.target.closest('.length-box')) return;
    const isPress = event.button === 2 || event.ctrlKey;
    if (!isPress || (event as Partial<PointerEvent>).pointerType === 'touch') return;
    flushInput(follow);
    giveUp();
    const point = pointOf(event as PointerEvent);
    openMenuFor(store().tool.kind === 'select' ? hitAt(point) : undefined, point);
  };

  const listeners = [
    ['pointerdown', onDown],
    ['pointermove', onMove],
    ['pointerup', onUp],
    ['pointercancel', onCancel],
    ['pointerleave', onLeave],
    ['wheel', onWheel],
    ['contextmenu', onContextMenu],
  ] as const;
  for (const [type, listener] of listeners)
    element.addEventListener(type, listener as EventListener, { passive: false });
  // A key means what is under the pointer now.
  const onKey = () => flushInput(follow);
  window.addEventListener('keydown', onKey, { capture: true });
  return () => {
    window.removeEventListener('keydown', onKey, { capture: true });
    cancelInNextFrame(follow);
    endHold();
    for (const [type, listener] of listeners) element.removeEventListener(type, listener as EventListener);
  };
}

/**
 * Whether a wheel event zooms: a mouse wheel comes in whole notches and straight, and a pinch on a touchpad comes with Ctrl; two
 * fingers on a touchpad pan.
 */
function isWheel(event: WheelEvent): boolean {
  if (event.ctrlKey || event.deltaMode === 1) return true;
  // The older measure of the same turn: 120 to a notch in every browser that has it.
  const notches = (event as WheelEvent & { readonly wheelDeltaY?: number }).wheelDeltaY;
  return event.deltaX === 0 && !event.shiftKey && (notches === undefined || notches % 120 === 0);
}

/** Two fingers: pans and zooms so that both points of the plan stay under them. */
function pinch(down: ReadonlyMap<number, XY>, moved: number, before: XY): void {
  const now = down.get(moved);
  const [, other] = [...down].find(([id]) => id !== moved) ?? [];
  if (!now || !other) return;
  const { viewport, setViewport } = store();
  const middle = (a: XY): XY => [(a[0] + other[0]) / 2, (a[1] + other[1]) / 2];
  const spread = (a: XY) => Math.hypot(a[0] - other[0], a[1] - other[1]);
  const panned = pannedBy(viewport, middle(now)[0] - middle(before)[0], middle(now)[1] - middle(before)[1]);
  setViewport(zoomedAt(panned, middle(now), spread(now) / Math.max(1, spread(before))));
}
