import type { Mm, Wall, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';

/** A wall drawn without thickness is given this half, mm, so that it still parts two rooms. */
const THINNEST_HALF: Mm = 0.001;

/** A point this little outside of a body, mm, counts as in it: rounding of coordinates is far less. */
const WITHIN: Mm = 1e-6;

/** A straight stretch of wall: its centre-line by twice its half thickness, square ends. */
export interface Rectangle {
  readonly from: XY;
  readonly to: XY;
  /** Unit vector from `from` to `to`. */
  readonly along: XY;
  readonly length: Mm;
  readonly half: Mm;
}

export function halfOf({ thickness }: Pick<Wall, 'thickness'>): Mm {
  return Math.max(THINNEST_HALF, thickness / 2);
}

export function rectangle(from: XY, to: XY, half: Mm): Rectangle {
  const length = distance(from, to);
  const along: XY = length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [1, 0];
  return { from, to, along, length, half };
}

/** Its four corners, clockwise on screen. */
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

/** Whether a convex ring lies in the rectangle, but for rounding. */
export function rectangleHolds({ from, along, length, half }: Rectangle, ring: Ring): boolean {
  const [ux, uy] = along;
  for (const p of ring) {
    const dx = p[0] - from[0];
    const dy = p[1] - from[1];
    const s = dx * ux + dy * uy;
    if (s < -WITHIN || s > length + WITHIN || Math.abs(dy * ux - dx * uy) > half + WITHIN) return false;
  }
  return true;
}

/** Half of the thickness that a rectangle needs to hold the ring as well, mm, and how far its ends have to move out for it. */
export function reachOf({ from, along: [ux, uy], length }: Rectangle, ring: Ring): { half: Mm; ends: Mm } {
  let half = 0;
  let ends = 0;
  for (const [x, y] of ring) {
    const s = (x - from[0]) * ux + (y - from[1]) * uy;
    half = Math.max(half, Math.abs((y - from[1]) * ux - (x - from[0]) * uy));
    ends = Math.max(ends, -s, s - length);
  }
  return { half, ends };
}
