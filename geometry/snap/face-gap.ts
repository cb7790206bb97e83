import type { Mm, Shape, XY } from '../plan/model.ts';
import { shapeRing } from '../plane/body.ts';
import type { Line } from '../plane/types.ts';

/** The outline of an item: its corners, or for a circle its center and radius. */
export interface Outline {
  readonly points: readonly XY[];
  readonly radius: Mm;
}

export function outlineOf(shape: Shape): Outline {
  if ('circle' in shape) return { points: [shape.circle.center], radius: shape.circle.radius };
  return { points: shapeRing(shape), radius: 0 };
}

/** An overlap with a face of at most this length counts as touching its end, mm. */
const TOUCHING_END: Mm = 0.001;

/** Returns the unit normal of a face into its room: to the right of its direction, on screen. */
export function inwardNormal([[ax, ay], [bx, by]]: Line): XY {
  const length = Math.hypot(bx - ax, by - ay) || 1;
  return [-(by - ay) / length || 0, (bx - ax) / length || 0];
}

/** Returns the signed distance of a point from the line of a face, mm; negative behind it. */
export function distanceInFront([a, b]: Line, [x, y]: XY): Mm {
  const [nx, ny] = inwardNormal([a, b]);
  return (x - a[0]) * nx + (y - a[1]) * ny;
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
    const [dx, dy] = [x + by[0] - a[0], y + by[1] - a[1]];
    return [dx * ny - dy * nx, dx * nx + dy * ny];
  });
  placed.forEach(([along, front], index) => {
    if (along >= low && along <= high) see(front);
    const [before, start] = placed[(index + placed.length - 1) % placed.length] as XY;
    for (const end of [low, high]) {
      if (before < end !== along < end) see(start + ((front - start) * (end - before)) / (along - before));
    }
  });
  return least === Number.POSITIVE_INFINITY ? null : least - radius;
}
