import { anchorOf } from '../../geometry/pick.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { nearestSpot } from '../engine.ts';
import { ITEM_LISTS } from '../state/plan-edits.ts';
import { selectLevel, selectRegion } from '../state/selectors.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { toPlan, toScreen } from '../state/viewport.ts';
import { keepInView } from './keep-in-view.ts';
import { createNudger } from './nudger.ts';
import { useSketch } from './sketch.ts';
import { type Hand, type Point, steps, store } from './tools/hand.ts';

/** The cross takes hold of what is as near as this, px. */
export const CROSS_REACH_PX = 12;

export const ARROWS: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Whether Space is held: a drag then moves the sheet. */
export interface KeyState {
  readonly isPanning: () => boolean;
  readonly stop: () => void;
}

/**
 * The keys of the sheet. They work wherever the focus is, but where something is typed or a dialog is open; arrows and Enter only
 * on the sheet itself or where nothing has the focus, so that buttons and lists keep theirs.
 */
export function listenToKeys(sheet: HTMLElement, hand: () => Hand): KeyState {
  let panning = false;
  const nudger = createNudger();

  const onDown = (event: KeyboardEvent) => {
    if (isTyping(event.target) || document.querySelector('dialog[open]')) return;
    const here = event.target === sheet || event.target === document.body;
    const done = hand().key?.(event) || commandKey(event) || (here && sheetKey(event));
    if (done) event.preventDefault();
  };
  const sheetKey = (event: KeyboardEvent): boolean => {
    if (event.key === ' ') {
      panning = true;
      return true;
    }
    const arrow = ARROWS[event.key];
    if (arrow) {
      const by = stepFor(event);
      if (store().tool.kind === 'select') return nudger.move(arrow[0] * by, arrow[1] * by);
      moveCross(hand(), [arrow[0] * by, arrow[1] * by], event.shiftKey);
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

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, select, textarea, [contenteditable]') !== null;
}

function giveUp(hand: Hand): void {
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
    case 'd':
      store().duplicateSelection();
      return true;
    case 'a':
      store().setTool(SELECT_TOOL);
      store().select(ITEM_LISTS.flatMap((list) => selectLevel(store())[list].map(({ id }) => id)));
      return true;
    default:
      return false;
  }
}

function plainKey(event: KeyboardEvent): boolean {
  const { selection, deleteSelection, zoomBy, setTool } = store();
  switch (event.key) {
    case 'Delete':
    case 'Backspace':
      deleteSelection();
      return selection.length > 0;
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
    case 'm':
    case 'M': {
      const [id] = selection;
      if (!id || selection.length !== 1) return false;
      const at = anchorOf(selectLevel(store()), id);
      setTool({ kind: 'move-here', id });
      useSketch.setState({ cross: at });
      return true;
    }
    case 'n':
    case 'N':
      return selectNext(event.shiftKey ? -1 : 1);
    case 'r':
    case 'R':
      return selection.length > 0 && turnSelection();
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

function turnSelection(): boolean {
  const level = selectLevel(store());
  const [id] = store().selection;
  const thing = [...level.fixtures, ...level.objects].find((each) => each.id === id);
  if (!id || !thing || !('box' in thing.shape)) return false;
  const { box } = thing.shape;
  store().updateItem(id, { shape: { box: { ...box, turn: (box.turn + 90) % 360 } } });
  return true;
}

function stepFor(event: KeyboardEvent): number {
  const { key, fine, coarse } = steps();
  if (event.ctrlKey || event.metaKey) return coarse;
  return event.shiftKey ? fine : key;
}

/** The first arrow brings the cross up; the next ones move it, and the sheet when it comes to the edge. */
function moveCross(hand: Hand, by: XY, fine: boolean): void {
  const { cross } = useSketch.getState();
  const at: XY = cross ? [cross[0] + by[0], cross[1] + by[1]] : firstCross();
  useSketch.setState({ cross: at });
  keepInView(at);
  hand.hover(crossPoint(at, fine));
}

/** Where the keyboard begins: on the nearest white for a detector, else in the middle of the stage. */
function firstCross(): XY {
  const { viewport, stageSize, tool } = store();
  if (tool.kind === 'split-wall') return anchorOf(selectLevel(store()), tool.id) ?? [0, 0];
  const middle = toPlan(viewport, [stageSize.width / 2, stageSize.height / 2]);
  const { grid } = steps();
  const spot = tool.kind === 'detector' ? (nearestSpot(selectRegion(store()), middle)?.at ?? middle) : middle;
  return [Math.round(spot[0] / grid) * grid, Math.round(spot[1] / grid) * grid];
}

function pressAtCross(hand: Hand, event: KeyboardEvent): boolean {
  const { cross } = useSketch.getState();
  if (!cross || store().tool.kind === 'select') return false;
  const point = crossPoint(cross, event.shiftKey);
  hand.down(point);
  hand.up(point);
  if (store().tool.kind === 'select') useSketch.setState({ cross: null });
  return true;
}

function crossPoint(plan: XY, shift: boolean): Point {
  const { viewport, snap } = store();
  return {
    plan,
    screen: toScreen(viewport, plan),
    shift,
    free: !snap,
    touch: false,
    reach: CROSS_REACH_PX / viewport.scale,
  };
}
