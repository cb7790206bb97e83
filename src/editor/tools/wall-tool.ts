import {
  buttPosition,
  clearLength,
  cornerAngle,
  insetAtWall,
  pointToward,
  wallAtPoint,
} from '../../../geometry/edit/draw-walls.ts';
import type { Deg, Mm, XY } from '../../../geometry/plan/model.ts';
import { distance, roundPoint } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { nearMiss } from '../../../geometry/snap/closing.ts';
import { RIGHT_ANGLES, type Snapped, snapPoint } from '../../../geometry/snap/snap-point.ts';
import { formatMeasured, parseLength } from '../../../geometry/units/index.ts';
import { parseTurn } from '../../../geometry/units/parse-turn.ts';
import { closeChainAsItIs, closeChainStraight, closeOutline, spreadChain } from '../../state/close-wall-chain.ts';
import { selectModel } from '../../state/selectors.ts';
import { thicknessFrom, withCorner } from '../../state/wall-chain.ts';
import { askForWall } from '../lengths/set-out.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { keepInView } from '../stage/keep-in-view.ts';
import { CURSOR_REACH_PX, currentLevel, gridFor, keepsTool, returnToSelect, store, targets } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';
import { createWallDirection } from './wall-direction.ts';

/**
 * Wall after wall. While the outline is open it is drawn as a line; closed onto its start, the line becomes the inside face,
 * since that is what a tape reads, and the walls stand outside it. Walls that end open stand on the line.
 */
export function createWallTool(): ToolController {
  let last: ToolPoint | null = null;
  const aim = createWallDirection();

  const show = (snapped: Corner | null) => {
    const points = corners();
    const next = aimed(points, snapped?.at ?? null);
    useSketch.setState({
      nextCorner: next,
      guides: snapped?.guides ?? [],
      gaps: snapped?.taped ?? [],
      reading: next && useSketch.getState().typed === null ? said(points, next, snapped?.at ?? null) : [],
    });
  };
  /** The next corner: at the length that stands in the box, in the direction that an arrow or a turn gives; else at the pointer. */
  const aimed = (points: readonly XY[], pointed: XY | null): XY | null => {
    const from = points.at(-1);
    const { typed, turn } = useSketch.getState();
    const read = typed === null ? null : parseLength(typed, store().plan.display.length);
    const toward = aim.toward(points, pointed);
    if (!from || !toward) return pointed;
    if (read?.ok && read.mm > 0) return lengthened(from, toward, read.mm);
    const led = aim.byArrow() && pointed && distance(pointed, from) < 1;
    return turn || typed !== null || led ? toward : pointed;
  };
  const said = (points: readonly XY[], next: XY, pointed: XY | null) => {
    const led = aim.byArrow() && pointed !== null && distance(pointed, next) > 1;
    return led ? ['Type how long the wall is'] : readings(points, next);
  };
  const end = () => {
    const before = new Set(currentLevel().walls.map(({ id }) => id));
    store().endChain();
    clearSketch();
    const drawn = currentLevel().walls.filter(({ id }) => !before.has(id));
    if (!useSketch.getState().touch) askForWall(new Set(drawn.map(({ id }) => id)));
  };
  const add = (at: XY, again: boolean) => {
    const points = corners();
    const [start] = points;
    const before = points.at(-1);
    if (start && points.length > 2 && distance(start, at) < 1) {
      closeOutline(points);
      clearSketch();
      if (!again) returnToSelect();
      return;
    }
    if (before && distance(before, at) < 1) {
      end();
      return;
    }
    store().setChain(withCorner(store().chain, at));
    aim.reset();
    if (useSketch.getState().cross) {
      // The next arrow starts from the corner that was set.
      useSketch.setState({ cross: at });
      keepInView(at);
      last = null;
    }
    if (nearMiss(corners())) store().say('');
    // A wall that reaches another one is done: what follows is another wall.
    if (points.length > 0 && wallAtPoint(currentLevel(), at)) end();
    else show(null);
  };

  return {
    hover: (point) => {
      last = point;
      if (!useSketch.getState().cross) aim.reset();
      show(nextPoint(point, corners()));
    },
    down: (point) => {
      last = point;
    },
    drag: (point) => {
      last = point;
      show(nextPoint(point, corners()));
    },
    up: (point) => add(nextPoint(point, corners()).at, keepsTool(point)),
    cancel: () => {
      const busy = corners().length > 0;
      if (useSketch.getState().typed !== null) useSketch.setState({ typed: null, turn: null });
      else if (busy) end();
      else clearSketch();
      return busy;
    },
    // A second finger zooms: what is drawn so far waits.
    interrupt: () => show(null),
    leave: () => {
      // The page may only be drawing itself anew.
      if (store().tool.kind !== 'wall') end();
    },
    key: (event) => {
      const drawing = corners().length > 0;
      if (event.ctrlKey || event.metaKey || event.altKey || !drawing) return false;
      if (event.key === 'Backspace') {
        store().undo();
        return true;
      }
      if (/^[0-9.]$/.test(event.key)) {
        useSketch.setState({ typed: event.key, turn: null });
        return true;
      }
      if (event.key === TURN_KEY) {
        useSketch.setState({ typed: '', turn: '' });
        return true;
      }
      const corner = corners().at(-1);
      // The arrow also moves the cross, which it leads from here.
      if (corner && aim.arrow(event, corner, CURSOR_REACH_PX / store().viewport.scale)) return false;
      if (closingKey(event.key)) {
        clearSketch();
        return true;
      }
      if (event.key === 'Enter' && useSketch.getState().cross === null) {
        end();
        return true;
      }
      return false;
    },
    typing: () => show(last && nextPoint(last, corners())),
    typedLength: (text) => {
      const { turn, touch, nextCorner } = useSketch.getState();
      const read = parseLength(text, store().plan.display.length);
      if (!read.ok) return read.message;
      if (read.mm <= 0) return 'A wall has some length. Write more than 0.';
      const turned = turn ? parseTurn(turn) : null;
      if (turned && !turned.ok) return turned.message;
      const points = corners();
      const from = points.at(-1);
      const before = points.at(-2);
      const shown = nextCorner ?? (last && nextPoint(last, points).at);
      const toward = touch && before && turn ? null : aim.toward(points, shown);
      if (from && toward && distance(from, toward) >= 1) add(lengthened(from, toward, read.mm), false);
      // By finger the corner is set already: its wall is made as long, and turned as far, as was typed.
      else if (from && before) {
        const rest = points.slice(0, -1);
        const aside = turn ? aim.toward(rest, from) : from;
        store().setChain({ corners: [...rest, lengthened(before, aside ?? from, read.mm)], takenBack: [] });
        show(null);
      } else return 'Show the direction first: move the pointer to where the wall goes, or press an arrow key.';
      return '';
    },
  };
}

/** Opens the turn of the next wall. */
export const TURN_KEY = '<';

/** C closes the run: as it is where it just misses its start, else straight from where it stands. S spreads what it misses by. */
function closingKey(key: string): boolean {
  const missed = nearMiss(corners()) !== null;
  if (key.toLowerCase() === 's' && missed) spreadChain();
  else if (key.toLowerCase() === 'c' && missed) closeChainAsItIs();
  else if (key.toLowerCase() === 'c') closeChainStraight();
  else return false;
  return true;
}

const corners = (): readonly XY[] => store().chain.corners;

/** The end of a wall whose tape length from the face of the wall that it starts on is `mm`. */
function lengthened(from: XY, toward: XY, mm: Mm): XY {
  return roundPoint(pointToward(from, toward, mm + insetAtWall(currentLevel(), from, toward)));
}

/** Where a corner goes; for one on a standing wall also how it is taped out. */
type Corner = Snapped & { readonly taped?: readonly Line[] };

function nextPoint(point: ToolPoint, points: readonly XY[]): Corner {
  const free: Snapped = { at: point.plan, hold: 'none', guides: [] };
  const [start] = points;
  if (start && points.length > 2 && distance(start, point.plan) <= point.reach)
    return { ...free, at: start, hold: 'end' };
  if (point.free) return free;
  const found = targets();
  const snapped = snapPoint(
    point.plan,
    { ...found, ends: [...found.ends, ...points] },
    { reach: point.reach, grid: gridFor(point), from: points.at(-1) ?? null, directions: directionsAfter(points) },
  );
  if (snapped.hold !== 'wall' || start) return snapped;
  const model = selectModel(store());
  const thickness = thicknessFrom(model, snapped.at);
  const butt = buttPosition(model.level, model, snapped.at, point.plan, thickness, gridFor(point));
  return butt ? { ...snapped, ...butt } : snapped;
}

/** Right angles of the page, and to the wall before: a house may stand aslant on it. */
function directionsAfter(points: readonly XY[]): readonly Deg[] {
  const [a, b] = points.slice(-2);
  if (!a || !b) return RIGHT_ANGLES;
  const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  return [...RIGHT_ANGLES, turn, turn + 90];
}

/** Length and angle of the wall that would be added. */
function readings(points: readonly XY[], next: XY): readonly string[] {
  const from = points.at(-1);
  if (!from || distance(from, next) < 1) return [];
  const line: Line = [from, next];
  const length = formatMeasured(clearLength(currentLevel(), line), store().plan.display.length);
  const before = points.at(-2);
  if (!before) return [length, 'or type the length'];
  return [length, `${Math.round(cornerAngle(before, from, next))}° to the wall before`];
}
