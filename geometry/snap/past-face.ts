import type { Mm, Shape, XY } from '../plan/model.ts';
import { shapeRing } from '../plane/body.ts';
import type { Line } from '../plane/types.ts';

/** The outline of a thing: its corners; for a round one its middle and its radius. */
export interface Outline {
  readonly points: readonly XY[];
  readonly radius: Mm;
}

export function outlineOf(shape: Shape): Outline {
  if ('circle' in shape) return { points: [shape.circle.center], radius: shape.circle.radius };
  return { points: shapeRing(shape), radius: 0 };
}

/** What lies beside a face over no more than this touches its end, mm. */
const BESIDE: Mm = 0.001;

/** Unit vector from a face into its room: to the right of one who walks along it, as the page shows it. */
export function intoRoom([[ax, ay], [bx, by]]: Line): XY {
  const length = Math.hypot(bx - ax, by - ay) || 1;
  return [-(by - ay) / length || 0, (bx - ax) / length || 0];
}

/** How far a point is in front of the line of a face, mm; below zero behind it. */
export function inFront([a, b]: Line, [x, y]: XY): Mm {
  const [nx, ny] = intoRoom([a, b]);
  return (x - a[0]) * nx + (y - a[1]) * ny;
}

/**
 * How far the nearest point of an outline, moved by `by`, is in front of a face, mm: below zero where it reaches into the wall
 * behind. Null where nothing of it lies beside the face.
 */
export function gapToFace({ points, radius }: Outline, by: XY, face: Line): Mm | null {
  const [a, b] = face;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const margin = Math.min(BESIDE, length / 4);
  const [low, high] = [margin, length - margin];
  const [nx, ny] = intoRoom(face);
  let least = Number.POSITIVE_INFINITY;
  const see = (front: Mm) => {
    if (front < least) least = front;
  };
  // Along the face, and in front of it.
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
