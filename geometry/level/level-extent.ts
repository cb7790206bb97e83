import type { Level } from '../plan/model.ts';
import { type Extent, shapeBody } from '../plane/body.ts';

/** Returns the bounding box of everything drawn on a level, walls with their thickness; null for an empty level. */
export function levelExtent(level: Level): Extent | null {
  const parts: Extent[] = [
    ...level.walls.flatMap(({ from, to, thickness }) => [square(from, thickness / 2), square(to, thickness / 2)]),
    ...[...level.fixtures, ...level.objects].map(({ shape }) => shapeBody(shape).extent),
    ...level.detectors.map(({ at, radius }) => square(at, radius)),
    ...level.rooms.map(({ at }) => square(at, 0)),
  ];
  const [first, ...rest] = parts;
  return first ? rest.reduce(unionExtent, first) : null;
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

function square([x, y]: readonly [number, number], half: number): Extent {
  return { minX: x - half, minY: y - half, maxX: x + half, maxY: y + half };
}
