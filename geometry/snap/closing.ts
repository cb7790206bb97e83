import type { Mm, XY } from '../plan/model.ts';
import { distance, roundPoint } from '../plane/point.ts';

/** The closing error of a traverse: how far walls measured all the way around miss their start. Lengths in mm. */
export interface ClosingError {
  readonly gap: Mm;
  /** The vector from the end of the traverse to its start: right, and down the page. */
  readonly across: Mm;
  readonly down: Mm;
  /** Total length of its walls. */
  readonly around: Mm;
  /** Gap divided by total length, 0…1. */
  readonly share: number;
}

/** An end closer to the start than this meets it, mm. */
const CLOSED: Mm = 1;
/** An end this close to the start is meant to meet it, mm (2 ft): the accumulated error of tape and angles. */
const NEAR_START: Mm = 609.6;
/** And at most this fraction of the total length. */
const NEAR_START_FRACTION = 0.1;
/** Sine of the angle below which a wall counts as square to the first one: 1 mm in a meter. */
const SQUARE_SINE = 1e-3;

/** Returns the closing error of corners whose last one should equal the first; null below three walls. */
export function closingError(corners: readonly XY[]): ClosingError | null {
  const [start, end] = [corners[0], corners.at(-1)];
  if (corners.length < 4 || !start || !end) return null;
  const around = legsOf(corners).reduce((sum, leg) => sum + leg, 0);
  const [across, down] = [start[0] - end[0], start[1] - end[1]];
  const gap = distance(start, end);
  return around === 0 ? null : { gap, across, down, around, share: gap / around };
}

/**
 * Returns the closing error if the end is so close to the start that it is probably intended to meet it, and does not; else null.
 */
export function nearMiss(corners: readonly XY[]): ClosingError | null {
  const error = closingError(corners);
  if (!error || error.gap < CLOSED) return null;
  return error.gap <= NEAR_START && error.share <= NEAR_START_FRACTION ? error : null;
}

/** Returns whether all walls are parallel or square to the first one. */
export function isRectangular(corners: readonly XY[]): boolean {
  const [a, b] = corners;
  if (!a || !b || corners.length < 4) return false;
  const [u, v] = axesOf(a, b);
  return corners.every((p, i) => {
    const before = corners[i - 1];
    if (!before) return true;
    const [dx, dy] = [p[0] - before[0], p[1] - before[1]];
    const off = Math.min(Math.abs(dx * u[0] + dy * u[1]), Math.abs(dx * v[0] + dy * v[1]));
    return off <= SQUARE_SINE * Math.hypot(dx, dy);
  });
}

/**
 * Returns the corners of the closed traverse with its error distributed over the walls in proportion to their lengths,
 * so that angles change slightly. The last corner, which should equal the first, is omitted. Compass rule of land
 * surveying (Bowditch, 1808; from memory). Fewer than three walls are returned unchanged.
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
 * Same as `spreadByLength`, but for a traverse with right angles, which are kept: the error along each axis is distributed
 * over the walls along that axis, in proportion to their lengths. Null when there is an error along an axis without walls,
 * or when the traverse is not rectangular.
 */
export function spreadSquare(corners: readonly XY[]): readonly XY[] | null {
  const error = closingError(corners);
  const [a, b] = corners;
  if (!error || !a || !b || !isRectangular(corners)) return null;
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

/** Returns the closed traverse as measured, except that the last wall ends at the start. */
export function closedByLastWall(corners: readonly XY[]): readonly XY[] {
  return corners.slice(0, -1);
}

function legsOf(corners: readonly XY[]): readonly Mm[] {
  return corners.slice(1).map((corner, i) => distance(corners[i] as XY, corner));
}

/** Unit vectors along the first wall and square to it. */
function axesOf(a: XY, b: XY): readonly [XY, XY] {
  const length = distance(a, b) || 1;
  const u: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return [u, [-u[1], u[0]]];
}
