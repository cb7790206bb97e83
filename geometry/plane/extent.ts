import type { Mm, Ring } from './types.ts';

/** Axis-aligned bounding box, mm. */
export interface Extent {
  readonly minX: Mm;
  readonly minY: Mm;
  readonly maxX: Mm;
  readonly maxY: Mm;
}

/** Returns the bounding box of a ring that has at least one corner. */
export function ringExtent(ring: Ring): Extent {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const point of ring) {
    const x = point[0];
    const y = point[1];
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** Returns the bounding box of a flat ring (x0, y0, x1, y1, …) that has at least one corner. */
export function flatExtent(flat: Float64Array): Extent {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < flat.length; i += 2) {
    const x = flat[i] as number;
    const y = flat[i + 1] as number;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** Returns whether two bounding boxes share a point; touching edges count. */
export function overlaps(a: Extent, b: Extent): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}

/** Returns the bounding box of a disc. */
export function discExtent(x: Mm, y: Mm, radius: Mm): Extent {
  return { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
}
