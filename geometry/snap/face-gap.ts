import type { Mm, Shape, XY } from '../plan/model.ts';
import { shapeRing } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import type { Line } from '../plane/types.ts';

/** The outline of an item: its corners, or for a circle its center and radius. */
export interface Outline {
  readonly points: readonly XY[];
  readonly radius: Mm;
}

/** Returns the outline of a shape, mm. The radius is 0 for a box or polygon. */
export function outlineOf(shape: Shape): Outline {
  if ('circle' in shape) return { points: [shape.circle.center], radius: shape.circle.radius };
  return { points: shapeRing(shape), radius: 0 };
}

/** An overlap with a face of at most this length counts as touching its end, mm. */
const TOUCHING_END: Mm = 0.001;

/** Returns the unit normal of a face into its room: to the right of its direction, on screen. */
export const inwardNormal: (face: Line) => XY = memoize(([[ax, ay], [bx, by]]) => {
  const length = Math.hypot(bx - ax, by - ay) || 1;
  return [-(by - ay) / length || 0, (bx - ax) / length || 0];
});

/** Returns the signed distance of a point from the line of a face, mm; negative behind it. */
export function distanceInFront(face: Line, [x, y]: XY): Mm {
  const [nx, ny] = inwardNormal(face);
  const [a] = face;
  return (x - a[0]) * nx + (y - a[1]) * ny;
}

/** Returns whether all of an outline moved by `by` is in front of the line of a face or touches it. */
export function isInFront({ points, radius }: Outline, [bx, by]: XY, face: Line): boolean {
  const [a] = face;
  const [nx, ny] = inwardNormal(face);
  return points.every(([x, y]) => (x + bx - a[0]) * nx + (y + by - a[1]) * ny >= radius);
}

/**
 * Returns the signed distance from a face to the nearest point of an outline moved by `by`, mm: negative if it
 * reaches into the wall behind. Null if no part of it is next to the face.
 */
export function gapToFace({ points, radius }: Outline, by: XY, face: Line): Mm | null {
  const [a, b] = face;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const margin = Math.min(TOUCHING_END, length / 4);
  const [low, high] = [margin, length - margin];
  const [nx, ny] = inwardNormal(face);
  let least = Number.POSITIVE_INFINITY;
  const see = (front: Mm) => {
    if (front < least) least = front;
  };
  // Coordinates along the face and in front of it.
  const placed = points.map(([x, y]): XY => {
    const dx = x + by[0] - a[0];
    const dy = y + by[1] - a[1];
    return [dx * ny - dy * nx, dx * nx + dy * ny];
  });
  let [before, start] = placed[placed.length - 1] ?? [0, 0];
  for (const [along, front] of placed) {
    if (along >= low && along <= high) see(front);
    const seeAt = (end: Mm) => see(start + ((front - start) * (end - before)) / (along - before));
    if (before < low !== along < low) seeAt(low);
    if (before < high !== along < high) seeAt(high);
    [before, start] = [along, front];
  }
  return least === Number.POSITIVE_INFINITY ? null : least - radius;
}
