import type { Mm, XY } from '../../geometry/plan/model.ts';
import { nearestSpot } from '../../geometry/region/nearest.ts';
import { anchorOf } from '../../geometry/snap/pick.ts';
import { isIdleLetter } from '../state/letter-keys.ts';
import { useMenu } from '../state/menu.ts';
import { selectLevel, selectRegion } from '../state/selectors.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { pannedBy, toPlan } from '../state/viewport.ts';
import { keepInView } from './keep-in-view.ts';
import { lengthKey } from './lengths/length-keys.ts';
import { createNudger } from './nudger.ts';
import { openMenuByKey } from './open-menu.ts';
import { useSketch } from './sketch.ts';
import { pressAt, steps, store } from './tools/tool-context.ts';
import type { ToolController } from './tools/tool-controller.ts';
import { isTyping } from './typing.ts';

export const ARROWS: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const LEVEL_KEYS = { PageUp: 'above', PageDown: 'below' } as const;

/** Whether Space is held: a drag then moves the sheet. */
export interface KeyState {
  readonly isPanning: () => boolean;
  readonly stop: () => void;
}

/**
 * The keys of the sheet. They work wherever the focus is, but where something is typed or a dialog is open; arrows and Enter only
 * on the sheet itself or where nothing has the focus, so that buttons and lists keep theirs.
 */
export function listenToKeys(sheet: HTMLElement, hand: () => ToolController): KeyState {
  let panning = false;
  const nudger = createNudger();

  const onDown = (event: KeyboardEvent) => {
    if (isTyping(event.target) || document.querySelector('dialog[open]') || useMenu.getState().ask) return;
    if (isIdleLetter(event)) return;
    const here = event.target === sheet || event.target === document.body;
    const done =
      lengthKey(event, here) ||
      hand().key?.(event) ||
      (here && menuKey(event)) ||
      commandKey(event) ||
      (here && sheetKey(event));
    if (done) event.preventDefault();
  };
  const menuKey = (event: KeyboardEvent): boolean => {
    if (event.key !== 'ContextMenu' && !(event.key === 'F10' && event.shiftKey)) return false;
    nudger.settle();
    openMenuByKey();
    return true;
  };
  const sheetKey = (event: KeyboardEvent): boolean => {
    if (event.key === ' ') {
      panning = true;
      return true;
    }
    const arrow = ARROWS[event.key];
    if (arrow) {
      const by = stepFor(event);
      if (store().tool.kind === 'select') return nudger.move(arrow[0] * by, arrow[1] * by) || panByKey(arrow, event);
      moveCross(hand(), [arrow[0] * by, arrow[1] * by], event.shiftKey);
      return true;
    }
    if (event.key === 'PageUp' || event.key === 'PageDown') {
      // What is in the middle of a move stays on its level.
      if (!store().draft && !store().live) store().stepLevel(LEVEL_KEYS[event.key]);
      return true;
    }
    if (event.key === 'Enter') return pressAtCross(hand(), event);
    return false;
  };
  const commandKey = (event: KeyboardEvent): boolean => {
    if (event.key === 'Escape') {
      nudger.settle();
      giveUp(hand());
      return true;
    }
    if (event.ctrlKey || event.metaKey) {
      nudger.settle();
      // A step back in the middle of a gesture is the gesture itself.
      if (event.key.toLowerCase() === 'z' && (store().draft || store().live)) return hand().cancel();
    }
    return event.ctrlKey || event.metaKey ? controlKey(event) : plainKey(event);
  };
  const onUp = (event: KeyboardEvent) => {
    if (event.key === ' ') panning = false;
    if (event.key in ARROWS) nudger.settle();
  };
  const onBlur = () => {
    panning = false;
    nudger.settle();
  };
  // First in line: a digit typed while a wall is drawn is a length, and nobody else's.
  window.addEventListener('keydown', onDown, { capture: true });
  window.addEventListener('keyup', onUp);
  window.addEventListener('blur', onBlur);
  return {
    isPanning: () => panning,
    stop: () => {
      window.removeEventListener('keydown', onDown, { capture: true });
      window.removeEventListener('keyup', onUp);
      window.removeEventListener('blur', onBlur);
    },
  };
}

function giveUp(hand: ToolController): void {
  if (hand.cancel()) return;
  if (store().tool.kind !== 'select') store().setTool(SELECT_TOOL);
  else store().say('');
  useSketch.setState({ cross: null });
}

function controlKey(event: KeyboardEvent): boolean {
  switch (event.key.toLowerCase()) {
    case 'z':
      if (event.shiftKey) store().redo();
      else store().undo();
      return true;
    case 'y':
      store().redo();
      return true;
    default:
      return false;
  }
}

function plainKey(event: KeyboardEvent): boolean {
  const { zoomBy } = store();
  switch (event.key) {
    case '+':
    case '=':
      zoomBy(1.25);
      return true;
    case '-':
      zoomBy(1 / 1.25);
      return true;
    case '0':
      store().fit();
      return true;
    case 'n':
    case 'N':
      return selectNext(event.shiftKey ? -1 : 1);
    default:
      return false;
  }
}

/** Round all items of the level, in the order of the file. */
function selectNext(step: 1 | -1): boolean {
  const level = selectLevel(store());
  const ids = [
    ...level.detectors,
    ...level.fixtures,
    ...level.objects,
    ...level.openings,
    ...level.rooms,
    ...level.walls,
  ].map(({ id }) => id);
  if (ids.length === 0) return false;
  const now = ids.indexOf(store().selection[0] ?? '');
  const next = now < 0 && step < 0 ? ids.length - 1 : (now + step + ids.length) % ids.length;
  store().select([ids[next] as string]);
  return true;
}

/** How far an arrow moves things, mm: more with Ctrl, less with Shift. */
export function stepFor(event: KeyboardEvent): Mm {
  const { key, fine, coarse } = steps();
  if (event.ctrlKey || event.metaKey) return coarse;
  return event.shiftKey ? fine : key;
}

/** An arrow moves the sheet by this, px; by a fifth of it with Shift, five times it with Ctrl. */
const PAN_PX = 40;

/** With nothing selected and nothing in hand, arrows look further that way. */
function panByKey([dx, dy]: XY, event: KeyboardEvent): boolean {
  const coarse = event.ctrlKey || event.metaKey;
  const fine = event.shiftKey ? 0.2 : 1;
  const by = PAN_PX * (coarse ? 5 : fine);
  store().setViewport(pannedBy(store().viewport, -dx * by, -dy * by));
  return true;
}

/** The first arrow brings the cross up; the next ones move it, and the sheet when it comes to the edge. */
function moveCross(hand: ToolController, by: XY, fine: boolean): void {
  const { cross } = useSketch.getState();
  const at: XY = cross ? [cross[0] + by[0], cross[1] + by[1]] : firstCross();
  useSketch.setState({ cross: at });
  keepInView(at);
  hand.hover(pressAt(at, fine));
}

/** Where the keyboard begins: on the nearest white for a detector, else in the middle of the stage. */
function firstCross(): XY {
  const { viewport, stageSize, tool } = store();
  if (tool.kind === 'split-wall' || tool.kind === 'grip') return anchorOf(selectLevel(store()), tool.id) ?? [0, 0];
  const middle = toPlan(viewport, [stageSize.width / 2, stageSize.height / 2]);
  const { grid } = steps();
  const spot = tool.kind === 'detector' ? (nearestSpot(selectRegion(store()), middle)?.at ?? middle) : middle;
  return [Math.round(spot[0] / grid) * grid, Math.round(spot[1] / grid) * grid];
}

function pressAtCross(hand: ToolController, event: KeyboardEvent): boolean {
  const { cross } = useSketch.getState();
  if (!cross || store().tool.kind === 'select') return false;
  const point = pressAt(cross, event.shiftKey);
  hand.down(point);
  hand.up(point);
  if (store().tool.kind === 'select') useSketch.setState({ cross: null });
  return true;
}
