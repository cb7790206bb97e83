import type { Level, Mm } from '../plan/model.ts';
import { shapeBody } from '../plane/body.ts';
import type { Extent } from '../plane/extent.ts';

/** Returns the bounding box of everything drawn on a level, walls with their thickness; null for an empty level. */
export function levelExtent({ walls, fixtures, objects, detectors, rooms }: Level): Extent | null {
  const extent = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  const add = (minX: Mm, minY: Mm, maxX: Mm, maxY: Mm) => {
    extent.minX = Math.min(extent.minX, minX);
    extent.minY = Math.min(extent.minY, minY);
    extent.maxX = Math.max(extent.maxX, maxX);
    extent.maxY = Math.max(extent.maxY, maxY);
  };
  const addSquare = ([x, y]: readonly [Mm, Mm], half: Mm) => add(x - half, y - half, x + half, y + half);
  for (const { from, to, thickness } of walls) {
    addSquare(from, thickness / 2);
    addSquare(to, thickness / 2);
  }
  for (const things of [fixtures, objects]) {
    for (const { shape } of things) {
      const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
      add(minX, minY, maxX, maxY);
    }
  }
  for (const { at, radius } of detectors) addSquare(at, radius);
  for (const { at } of rooms) addSquare(at, 0);
  return extent.minX <= extent.maxX ? extent : null;
}

/** Returns the bounding box of both. */
export function unionExtent(a: Extent, b: Extent): Extent {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}
