import {
  clearLength,
  cornerAngle,
  inset,
  pointToward,
  wallAtPoint,
  wallsAroundOutline,
} from '../../../geometry/draw-walls.ts';
import type { Deg, Mm, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/point.ts';
import { type Line, RIGHT_ANGLES, type Snapped, snapPoint, tidyPoint } from '../../../geometry/snap.ts';
import { formatLength, parseLength } from '../../../geometry/units.ts';
import { NO_CHAIN, thicknessFrom, withCorner } from '../../state/chain.ts';
import { selectModel } from '../../state/selectors.ts';
import { clearSketch, useSketch } from '../sketch.ts';
import { currentLevel, gridFor, type Hand, type Point, putBack, store, targets } from './hand.ts';

/**
 * Wall after wall. While the outline is open it is drawn as a line; closed onto its start, the line becomes the inside face,
 * since that is what a tape reads, and the walls stand outside it. Walls that end open stand on the line.
 */
export function createWallHand(): Hand {
  let last: Point | null = null;

  const show = (snapped: Snapped | null) => {
    const points = corners();
    const next = snapped && asTyped(points.at(-1), snapped.at);
    const typing = useSketch.getState().typed !== null;
    useSketch.setState({
      nextCorner: next,
      guides: snapped?.guides ?? [],
      reading: next && !typing ? readings(points, next) : [],
    });
  };
  const end = () => {
    store().endChain();
    clearSketch();
  };
  const add = (at: XY, again: boolean) => {
    const points = corners();
    const [start] = points;
    const before = points.at(-1);
    if (start && points.length > 2 && distance(start, at) < 1) {
      close(points, start);
      if (!again) putBack();
      return;
    }
    if (before && distance(before, at) < 1) {
      end();
      return;
    }
    store().setChain(withCorner(store().chain, at));
    // A wall that reaches another one is done: what follows is another wall.
    if (points.length > 0 && wallAtPoint(currentLevel(), at)) end();
    else show(null);
  };

  return {
    hover: (point) => {
      last = point;
      show(nextPoint(point, corners()));
    },
    down: (point) => {
      last = point;
    },
    drag: (point) => {
      last = point;
      show(nextPoint(point, corners()));
    },
    up: (point) => add(nextPoint(point, corners()).at, point.shift),
    cancel: () => {
      const busy = corners().length > 0;
      if (useSketch.getState().typed !== null) useSketch.setState({ typed: null });
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
        useSketch.setState({ typed: event.key });
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
      const read = parseLength(text, store().plan.display.length);
      if (!read.ok) return read.message;
      if (read.mm <= 0) return 'A wall has some length. Write more than 0.';
      const points = corners();
      const from = points.at(-1);
      const toward = useSketch.getState().nextCorner ?? (last && nextPoint(last, points).at);
      const before = points.at(-2);
      if (from && toward && distance(from, toward) >= 1) add(lengthened(from, toward, read.mm), false);
      // By finger the corner is set already: its wall is made as long as was typed.
      else if (from && before) {
        store().setChain({ corners: [...points.slice(0, -1), lengthened(before, from, read.mm)], takenBack: [] });
        show(null);
      } else return 'Show the direction first: move the pointer to where the wall goes.';
      return '';
    },
  };
}

const corners = (): readonly XY[] => store().chain.corners;

/** The outline is whole: its line becomes the inside face. */
function close(points: readonly XY[], start: XY): void {
  const thickness = thicknessFrom(selectModel(store()), start);
  store().setChain(NO_CHAIN);
  store().addWalls(wallsAroundOutline(points, thickness), thickness);
  clearSketch();
}

/** The next corner at the length that stands in the box; where the pointer has it while none does. */
function asTyped(from: XY | undefined, next: XY): XY {
  const { typed } = useSketch.getState();
  const read = typed === null ? null : parseLength(typed, store().plan.display.length);
  return from && read?.ok && read.mm > 0 && distance(from, next) >= 1 ? lengthened(from, next, read.mm) : next;
}

/** The end of a wall whose tape length from the face of the wall that it starts on is `mm`. */
function lengthened(from: XY, toward: XY, mm: Mm): XY {
  return tidyPoint(pointToward(from, toward, mm + inset(currentLevel(), from, toward)));
}

function nextPoint(point: Point, points: readonly XY[]): Snapped {
  const free: Snapped = { at: point.plan, hold: 'none', guides: [] };
  const [start] = points;
  if (start && points.length > 2 && distance(start, point.plan) <= point.reach)
    return { ...free, at: start, hold: 'end' };
  if (point.free) return free;
  const found = targets();
  return snapPoint(
    point.plan,
    { ...found, ends: [...found.ends, ...points] },
    { reach: point.reach, grid: gridFor(point), from: points.at(-1) ?? null, directions: directionsAfter(points) },
  );
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
  const length = formatLength(clearLength(currentLevel(), line), store().plan.display.length);
  const before = points.at(-2);
  if (!before) return [length, 'or type the length'];
  return [length, `${Math.round(cornerAngle(before, from, next))}° to the wall before`];
}
