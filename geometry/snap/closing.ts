import type { Mm, XY } from '../plan/model.ts';
import { distance, roundPoint } from '../plane/point.ts';

/** How far a run of walls that was taped all round misses its start. Lengths in mm. */
export interface ClosingError {
  readonly gap: Mm;
  /** From where the run ends to its start: right, and down the page. */
  readonly across: Mm;
  readonly down: Mm;
  /** Length of all walls of the run. */
  readonly around: Mm;
  /** Gap by length of all walls, 0…1. */
  readonly share: number;
}

/** Below this a run meets its start, mm. */
const MEETS_START: Mm = 1;
/** A run that ends this near to its start was meant to meet it: as far as the tape or an angle may have slipped, mm; 2 ft. */
const MEANT_TO_MEET: Mm = 609.6;
/** And no more than this share of its length. */
const MEANT_SHARE = 0.1;
/** A wall this little off (sine) counts as square to the first one: 1 mm in a metre. */
const SQUARE = 1e-3;

/** The closing error of a run of corners whose last one should be its first; null below three walls. */
export function closingError(corners: readonly XY[]): ClosingError | null {
  const [start, end] = [corners[0], corners.at(-1)];
  if (corners.length < 4 || !start || !end) return null;
  const around = legsOf(corners).reduce((sum, leg) => sum + leg, 0);
  const [across, down] = [start[0] - end[0], start[1] - end[1]];
  const gap = distance(start, end);
  return around === 0 ? null : { gap, across, down, around, share: gap / around };
}

/** The closing error where the run comes back so near to its start that it was meant to meet it, and does not; else null. */
export function missedStart(corners: readonly XY[]): ClosingError | null {
  const error = closingError(corners);
  if (!error || error.gap < MEETS_START) return null;
  return error.gap <= MEANT_TO_MEET && error.share <= MEANT_SHARE ? error : null;
}

/** Whether all walls run square to the first one or along it. */
export function isSquareRun(corners: readonly XY[]): boolean {
  const [a, b] = corners;
  if (!a || !b || corners.length < 4) return false;
  const [u, v] = axesOf(a, b);
  return corners.every((p, i) => {
    const before = corners[i - 1];
    if (!before) return true;
    const [dx, dy] = [p[0] - before[0], p[1] - before[1]];
    const off = Math.min(Math.abs(dx * u[0] + dy * u[1]), Math.abs(dx * v[0] + dy * v[1]));
    return off <= SQUARE * Math.hypot(dx, dy);
  });
}

/**
 * The corners of the closed run with its error spread over the walls by their lengths: each corner is moved by the part of the
 * error that belongs to the walls before it, so a long wall takes more of it. Walls turn a little. The last corner, which should be the
 * first, is left out. The compass rule of land surveying (Bowditch, 1808; from memory). Fewer than three walls stay as they are.
 */
export function spreadByLength(corners: readonly XY[]): readonly XY[] {
  const error = closingError(corners);
  if (!error) return corners;
  let walked = 0;
  return corners.slice(0, -1).map((corner, i) => {
    const before = corners[i - 1];
    walked += before ? distance(before, corner) : 0;
    const part = walked / error.around;
    return roundPoint([corner[0] + error.across * part, corner[1] + error.down * part]);
  });
}

/**
 * The same for a run at right angles, which stay: what misses along one way is spread over the walls that run that way, by their
 * lengths. Null where a way misses and no wall runs along it, or the run is not at right angles.
 */
export function spreadSquare(corners: readonly XY[]): readonly XY[] | null {
  const error = closingError(corners);
  const [a, b] = corners;
  if (!error || !a || !b || !isSquareRun(corners)) return null;
  const moves = axesOf(a, b).map((axis) => {
    const legs = corners.map((p, i) => {
      const before = corners[i - 1] ?? p;
      return Math.abs((p[0] - before[0]) * axis[0] + (p[1] - before[1]) * axis[1]);
    });
    const all = legs.reduce((sum, leg) => sum + leg, 0);
    const misses = error.across * axis[0] + error.down * axis[1];
    return { axis, legs, all, misses };
  });
  if (moves.some(({ all, misses }) => all === 0 && Math.abs(misses) > 1e-9)) return null;
  const walked = [0, 0];
  return corners.slice(0, -1).map((corner, i) => {
    let [x, y] = corner;
    moves.forEach(({ axis, legs, all, misses }, k) => {
      walked[k] = (walked[k] ?? 0) + (legs[i] ?? 0);
      const by = all === 0 ? 0 : (misses * (walked[k] ?? 0)) / all;
      x += axis[0] * by;
      y += axis[1] * by;
    });
    return roundPoint([x, y]);
  });
}

/** The closed run as it was taped but for its last wall, which goes to the start whatever was taped. */
export function closedAsItIs(corners: readonly XY[]): readonly XY[] {
  return corners.slice(0, -1);
}

function legsOf(corners: readonly XY[]): readonly Mm[] {
  return corners.slice(1).map((corner, i) => distance(corners[i] as XY, corner));
}

/** Along the first wall, and square to it. */
function axesOf(a: XY, b: XY): readonly [XY, XY] {
  const length = distance(a, b) || 1;
  const u: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return [u, [-u[1], u[0]]];
}
