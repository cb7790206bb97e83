import {
  clearLength,
  cornerAngle,
  inset,
  pointToward,
  wallAtPoint,
  wallsAlongChain,
  wallsAroundOutline,
} from '../../../geometry/draw-walls.ts';
import type { Deg, Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/point.ts';
import { ringsContain } from '../../../geometry/ring.ts';
import { type Line, RIGHT_ANGLES, type Snapped, snapPoint, tidyPoint } from '../../../geometry/snap.ts';
import { formatLength, parseLength } from '../../../geometry/units.ts';
import { WALL_THICKNESS } from '../../state/defaults.ts';
import { selectModel } from '../../state/selectors.ts';
import { clearSketch, useSketch } from '../sketch.ts';
import { addWalls } from './add-walls.ts';
import { currentLevel, gridFor, type Hand, type Point, store, targets } from './hand.ts';

/**
 * Wall after wall. While the outline is open it is drawn as a line; closed onto its start, the line becomes the inside face,
 * since that is what a tape reads, and the walls stand outside it. Walls that end open stand on the line.
 */
export function createWallHand(): Hand {
  let points: readonly XY[] = [];
  let last: Point | null = null;

  const show = (snapped: Snapped | null) => {
    const next = snapped && asTyped(points.at(-1), snapped.at);
    const typing = useSketch.getState().typed !== null;
    useSketch.setState({
      chain: points.length > 0 || next ? { points, next, thickness: thicknessFrom(points[0] ?? next) } : null,
      guides: snapped?.guides ?? [],
      reading: next && !typing ? readings(points, next) : [],
    });
  };
  /** The plan and level that the run was begun on: what is drawn is never carried over to another. */
  let begun: { readonly plan: Plan; readonly levelId: string } | null = null;
  const reset = () => {
    points = [];
    begun = null;
    clearSketch();
  };
  const end = () => {
    const lines = wallsAlongChain(points);
    const [start] = points;
    if (start && lines.length > 0) addWalls(lines, thicknessFrom(start));
    reset();
  };
  const add = (at: XY) => {
    const [start] = points;
    const before = points.at(-1);
    if (start && points.length > 2 && distance(start, at) < 1) {
      addWalls(wallsAroundOutline(points, thicknessFrom(start)), thicknessFrom(start));
      reset();
      return;
    }
    if (before && distance(before, at) < 1) {
      end();
      return;
    }
    if (points.length === 0) begun = { plan: store().plan, levelId: currentLevel().id };
    points = [...points, at];
    // A wall that reaches another one is done: what follows is another wall.
    if (points.length > 1 && wallAtPoint(currentLevel(), at)) end();
    else show(null);
  };

  return {
    hover: (point) => {
      last = point;
      show(nextPoint(point, points));
    },
    down: (point) => {
      last = point;
    },
    drag: (point) => {
      last = point;
      show(nextPoint(point, points));
    },
    up: (point) => add(nextPoint(point, points).at),
    cancel: () => {
      const busy = points.length > 0;
      if (useSketch.getState().typed !== null) useSketch.setState({ typed: null });
      else if (busy) end();
      else clearSketch();
      return busy;
    },
    // A second finger zooms: what is drawn so far waits.
    interrupt: () => show(null),
    leave: () => {
      if (begun?.plan === store().plan && begun.levelId === currentLevel().id) end();
      else reset();
    },
    key: (event) => {
      const isUndo = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !event.shiftKey;
      if (points.length > 0 && (event.key === 'Backspace' || isUndo)) {
        points = points.slice(0, -1);
        show(null);
        return true;
      }
      if (event.ctrlKey || event.metaKey || event.altKey) return false;
      if (points.length > 0 && /^[0-9.]$/.test(event.key)) {
        useSketch.setState({ typed: event.key });
        return true;
      }
      if (event.key === 'Enter' && points.length > 0 && useSketch.getState().cross === null) {
        end();
        return true;
      }
      return false;
    },
    typing: () => show(last && nextPoint(last, points)),
    typedLength: (text) => {
      const read = parseLength(text, store().plan.display.length);
      if (!read.ok) return read.message;
      if (read.mm <= 0) return 'A wall has some length. Write more than 0.';
      const from = points.at(-1);
      const toward = useSketch.getState().chain?.next ?? (last && nextPoint(last, points).at);
      const before = points.at(-2);
      if (from && toward && distance(from, toward) >= 1) add(lengthened(from, toward, read.mm));
      // By finger the corner is set already: its wall is made as long as was typed.
      else if (from && before) {
        points = [...points.slice(0, -1), lengthened(before, from, read.mm)];
        show(null);
      } else return 'Show the direction first: move the pointer to where the wall goes.';
      return '';
    },
  };
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

/** A partition where walls stand already, an outer wall on open paper. */
function thicknessFrom(start: XY | null | undefined): Mm {
  if (!start) return WALL_THICKNESS.outer;
  const level = currentLevel();
  const inRoom = selectModel(store()).rooms.some(({ floorRings }) => ringsContain(floorRings, start));
  return inRoom || wallAtPoint(level, start) ? WALL_THICKNESS.partition : WALL_THICKNESS.outer;
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
