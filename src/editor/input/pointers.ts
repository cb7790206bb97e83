import type { XY } from '../../../geometry/plan/model.ts';
import { pannedBy, toPlan } from '../../state/viewport.ts';
import { openMenuFor } from '../open-menu.ts';
import { useSketch } from '../overlay/sketch.ts';
import { cancelInNextFrame, flushInput, inNextFrame } from '../stage/frame-loop.ts';
import { hitAt } from '../tools/pick-at.ts';
import { store } from '../tools/tool-context.ts';
import type { ToolController, ToolPoint } from '../tools/tool-controller.ts';
import { keepTapOn } from './keep-focus.ts';
import { pinched, wheeled } from './viewport-gestures.ts';

/** A pointer within this distance of a thing counts as on it, px. */
const REACH_PX = { mouse: 9, touch: 20 } as const;
/** A press by finger or stylus that lasts at least `ms` and moves at most `px` is a long press. */
const LONG_PRESS = { ms: 500, px: 9 } as const;

/**
 * Adds one set of listeners for the whole sheet: one pointer operates the active tool, two fingers or the middle button pan, the wheel
 * zooms. Returns the function that removes them.
 */
export function listenToPointers(
  element: HTMLElement,
  controller: () => ToolController,
  isPanning: () => boolean,
): () => void {
  const pointers = new Pointers(element, controller, isPanning);
  const listeners = [
    ['pointerdown', pointers.onDown],
    ['pointermove', pointers.onMove],
    ['pointerup', pointers.onUp],
    ['pointercancel', pointers.onCancel],
    ['pointerleave', pointers.onLeave],
    ['wheel', pointers.onWheel],
    ['contextmenu', pointers.onContextMenu],
  ] as const;
  for (const [type, listener] of listeners)
    element.addEventListener(type, listener as EventListener, { passive: false });
  // A key refers to what is under the pointer now.
  window.addEventListener('keydown', pointers.flush, { capture: true });
  return () => {
    window.removeEventListener('keydown', pointers.flush, { capture: true });
    pointers.stop();
    for (const [type, listener] of listeners) element.removeEventListener(type, listener as EventListener);
  };
}

/** The state of all pointers on the sheet. */
class Pointers {
  readonly #element: HTMLElement;
  readonly #controller: () => ToolController;
  readonly #isPanning: () => boolean;
  /** Place of each pointer that is down, px of the sheet, by its id. */
  readonly #down = new Map<number, XY>();
  /** Last point of a pan; null while none is under way. */
  #panFrom: XY | null = null;
  /** Whether the active tool handles a press. */
  #isWorking = false;
  /** Id of the stylus that is down: any touch meanwhile is the palm. */
  #stylus: number | null = null;
  #longPressTimer: ReturnType<typeof setTimeout> | undefined;
  #pressedAt: XY | null = null;
  /** The last move that no frame has handled yet. */
  #moved: PointerEvent | null = null;

  constructor(element: HTMLElement, controller: () => ToolController, isPanning: () => boolean) {
    this.#element = element;
    this.#controller = controller;
    this.#isPanning = isPanning;
  }

  stop(): void {
    cancelInNextFrame(this.#follow);
    this.#endLongPress();
  }

  /** Handles a move now that waits for its frame. */
  readonly flush = (): void => flushInput(this.#follow);

  readonly onDown = (event: PointerEvent): void => {
    this.flush();
    // A press on a button over the sheet is left to the button.
    if (isWithin(event, 'button') || this.#isPalm(event)) return;
    if (event.pointerType === 'pen') this.#putStylusDown(event);
    this.#element.setPointerCapture(event.pointerId);
    const screen = this.#screenOf(event);
    this.#down.set(event.pointerId, screen);
    if (this.#down.size === 2) this.#giveUp();
    if (this.#down.size > 1) return;
    if (event.button === 1 || (event.button === 0 && this.#isPanning())) {
      this.#panFrom = screen;
      event.preventDefault();
    } else if (event.button === 0) this.#press(event, screen);
  };

  readonly onMove = (event: PointerEvent): void => {
    const screen = this.#screenOf(event);
    const before = this.#down.get(event.pointerId);
    if (before) this.#down.set(event.pointerId, screen);
    // A palm, or a finger whose press was given up.
    if (!before && event.pointerType === 'touch') return;
    if (this.#pressedAt && distancePx(screen, this.#pressedAt) > LONG_PRESS.px) this.#endLongPress();
    const [, other] = [...this.#down].find(([id]) => id !== event.pointerId) ?? [];
    if (before && other && this.#down.size === 2) {
      store().setViewport(pinched(store().viewport, before, screen, other));
      return;
    }
    this.#moved = event;
    inNextFrame('input', this.#follow);
  };

  readonly onUp = (event: PointerEvent): void => {
    if (!this.#lift(event)) return;
    this.#endLongPress();
    if (!this.#isWorking) return;
    this.#isWorking = false;
    this.#controller().up(this.#pointOf(event));
    if (event.pointerType !== 'touch') return;
    useSketch.setState({ pointer: null });
    keepTapOn(this.#element);
  };

  readonly onCancel = (event: PointerEvent): void => {
    if (this.#lift(event)) this.#giveUp();
  };

  readonly onLeave = ({ pointerType }: PointerEvent): void => {
    this.flush();
    if (this.#isWorking) return;
    this.#controller().out?.();
    useSketch.setState({ pointer: null });
    // A finger leaves with every tap, so what it has pointed at stays shown.
    if (pointerType !== 'touch') store().setHover(null);
  };

  readonly onWheel = (event: WheelEvent): void => {
    event.preventDefault();
    this.flush();
    store().setViewport(wheeled(store().viewport, event, this.#screenOf(event)));
  };

  /** For a mouse or the button of a stylus: a finger's long press has its own timer, and keys are commands. */
  readonly onContextMenu = (event: MouseEvent): void => {
    event.preventDefault();
    const isPress = event.button === 2 || event.ctrlKey;
    if (!isPress || (event as Partial<PointerEvent>).pointerType === 'touch') return;
    this.flush();
    this.#giveUp();
    const point = this.#pointOf(event as PointerEvent);
    openMenuFor(store().tool.kind === 'select' ? hitAt(point) : undefined, point);
  };

  /** A mouse sends more moves than there are frames: only the last one before a frame is handled. */
  readonly #follow = (): void => {
    const event = this.#moved;
    this.#moved = null;
    if (!event) return;
    if (this.#panFrom) {
      const screen = this.#screenOf(event);
      store().setViewport(pannedBy(store().viewport, screen[0] - this.#panFrom[0], screen[1] - this.#panFrom[1]));
      this.#panFrom = screen;
      return;
    }
    const point = this.#show(event);
    if (this.#isWorking) this.#controller().drag(point);
    else if (event.pointerType !== 'touch') this.#controller().hover(point);
  };

  #press(event: PointerEvent, screen: XY): void {
    this.#isWorking = true;
    this.#controller().down(this.#show(event));
    if (event.pointerType === 'mouse') return;
    this.#pressedAt = screen;
    this.#longPressTimer = setTimeout(() => {
      this.#pressedAt = null;
      if (this.#isWorking) this.#controller().hold?.(this.#pointOf(event));
    }, LONG_PRESS.ms);
  }

  /** The palm may come down before the stylus: its gesture is canceled. */
  #putStylusDown({ pointerId }: PointerEvent): void {
    if (this.#down.size > 0) this.#giveUp();
    this.#down.clear();
    this.#stylus = pointerId;
  }

  /** Takes a pointer off the sheet. Returns whether it was down. */
  #lift({ pointerId }: PointerEvent): boolean {
    this.flush();
    if (this.#stylus === pointerId) this.#stylus = null;
    const wasDown = this.#down.delete(pointerId);
    if (wasDown) this.#panFrom = null;
    return wasDown;
  }

  #giveUp(): void {
    this.#endLongPress();
    const tool = this.#controller();
    if (this.#isWorking && tool.interrupt) tool.interrupt();
    else if (this.#isWorking) tool.cancel();
    this.#isWorking = false;
  }

  #endLongPress(): void {
    clearTimeout(this.#longPressTimer);
    this.#pressedAt = null;
  }

  #isPalm({ pointerType }: PointerEvent): boolean {
    return this.#stylus !== null && pointerType === 'touch';
  }

  /** Stores where the pointer is, for what is drawn at it. */
  #show(event: PointerEvent): ToolPoint {
    const point = this.#pointOf(event);
    useSketch.setState({ pointer: point.plan, touch: point.touch, cross: null });
    return point;
  }

  #screenOf(event: { readonly clientX: number; readonly clientY: number }): XY {
    const { left, top } = this.#element.getBoundingClientRect();
    return [event.clientX - left, event.clientY - top];
  }

  #pointOf(event: PointerEvent): ToolPoint {
    const screen = this.#screenOf(event);
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
  }
}

function distancePx([ax, ay]: XY, [bx, by]: XY): number {
  return Math.hypot(ax - bx, ay - by);
}

function isWithin({ target }: Event, selector: string): boolean {
  return target instanceof Element && target.closest(selector) !== null;
}
