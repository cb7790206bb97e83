import type { Mm, Wall, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';

/** Half thickness of a wall drawn without thickness, mm, so that it still separates two rooms. */
const LEAST_HALF_THICKNESS: Mm = 0.001;

/** Tolerance for containment, mm, well above the rounding of coordinates. */
const CONTAINS_TOLERANCE: Mm = 1e-6;

/** A straight stretch of wall: center-line, half thickness, square ends. */
export interface Rectangle {
  readonly from: XY;
  readonly to: XY;
  /** Unit vector from `from` to `to`. */
  readonly along: XY;
  readonly length: Mm;
  readonly half: Mm;
}

/** Returns half the thickness of a wall, mm; never 0. */
export function halfThickness({ thickness }: Pick<Wall, 'thickness'>): Mm {
  return Math.max(LEAST_HALF_THICKNESS, thickness / 2);
}

/** Returns a rectangle by its center-line and half thickness, mm; directed along +x if it has no length. */
export function rectangle(from: XY, to: XY, half: Mm): Rectangle {
  const length = distance(from, to);
  const along: XY = length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [1, 0];
  return { from, to, along, length, half };
}

/** Returns its four corners, clockwise on screen. */
export function rectangleRing({ from, to, along: [ux, uy], half }: Rectangle): Ring {
  const x = -uy * half;
  const y = ux * half;
  return [
    [from[0] - x, from[1] - y],
    [to[0] - x, to[1] - y],
    [to[0] + x, to[1] + y],
    [from[0] + x, from[1] + y],
  ];
}

/** Returns whether the rectangle contains a convex ring, within tolerance. */
export function rectangleContains({ from, along, length, half }: Rectangle, ring: Ring): boolean {
  const [ux, uy] = along;
  for (const p of ring) {
    const dx = p[0] - from[0];
    const dy = p[1] - from[1];
    const s = dx * ux + dy * uy;
    if (
      s < -CONTAINS_TOLERANCE ||
      s > length + CONTAINS_TOLERANCE ||
      Math.abs(dy * ux - dx * uy) > half + CONTAINS_TOLERANCE
    )
      return false;
  }
  return true;
}

/** Returns the half thickness that the rectangle needs to contain the ring, and how far its ends must move out, mm. */
export function requiredGrowth({ from, along: [ux, uy], length }: Rectangle, ring: Ring): { half: Mm; ends: Mm } {
  let half = 0;
  let ends = 0;
  for (const [x, y] of ring) {
    const s = (x - from[0]) * ux + (y - from[1]) * uy;
    half = Math.max(half, Math.abs((y - from[1]) * ux - (x - from[0]) * uy));
    ends = Math.max(ends, -s, s - length);
  }
  return { half, ends };
}
