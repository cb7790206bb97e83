import { levelExtent, unionExtent } from '../level/level-extent.ts';
import type { Level, Mm, Opening, Shape, Wall, XY } from '../plan/model.ts';
import { shapeBody, shapeMiddle, signedBodyDistance } from '../plane/body.ts';
import type { Extent } from '../plane/extent.ts';
import { along, distance, nearestOnSegment } from '../plane/point.ts';

/** The list of a level that contains an item. */
type ItemList = 'walls' | 'openings' | 'rooms' | 'fixtures' | 'objects' | 'detectors';

/** An item under a point. */
export interface Hit {
  readonly list: ItemList;
  readonly id: string;
}

/**
 * Returns the items of a level within `reach` mm of the point, most likely target first: detectors, openings, then
 * fixtures and objects from small to large (so that a drain under a table can be selected), room labels, walls.
 */
export function hitsAt(level: Level, at: XY, reach: Mm): readonly Hit[] {
  return [
    ...byDistance('detectors', level.detectors, ({ at: axis, radius }) => distance(axis, at) - radius, reach),
    ...byDistance('openings', level.openings, (opening) => openingDistance(level, opening, at), reach),
    ...solids(level, at, reach),
    ...byDistance('rooms', level.rooms, (room) => distance(room.at, at) - reach, reach),
    ...byDistance('walls', level.walls, (wall) => wallDistance(wall, at), reach),
  ];
}

/** Returns the ids of the items wholly inside the rectangle. Openings are omitted because they move with their wall. */
export function itemsWithin(level: Level, extent: Extent): readonly string[] {
  const alone = { ...level, walls: [], openings: [], rooms: [], fixtures: [], objects: [], detectors: [] };
  const inside = (part: Partial<Level>): boolean => {
    const itemExtent = levelExtent({ ...alone, ...part });
    return itemExtent !== null && extentContains(extent, itemExtent);
  };
  return [
    ...level.walls.filter((wall) => inside({ walls: [wall] })),
    ...level.rooms.filter((room) => inside({ rooms: [room] })),
    ...level.fixtures.filter((fixture) => inside({ fixtures: [fixture] })),
    ...level.objects.filter((object) => inside({ objects: [object] })),
    ...level.detectors.filter((detector) => inside({ detectors: [detector] })),
  ].map(({ id }) => id);
}

/** Returns the rectangle between two opposite corners, in any order. */
export function extentBetween(a: XY, b: XY): Extent {
  const at = ([x, y]: XY): Extent => ({ minX: x, minY: y, maxX: x, maxY: y });
  return unionExtent(at(a), at(b));
}

/** Returns the two jambs of an opening on the center-line of its wall; null if the wall is missing or has no length. */
export function jambs(level: Level, opening: Opening): readonly [near: XY, far: XY] | null {
  const wall = level.walls.find(({ id }) => id === opening.wall);
  const length = wall ? distance(wall.from, wall.to) : 0;
  if (!wall || length === 0) return null;
  const on = (mm: Mm): XY => [
    wall.from[0] + ((wall.to[0] - wall.from[0]) * mm) / length,
    wall.from[1] + ((wall.to[1] - wall.from[1]) * mm) / length,
  ];
  return [on(opening.offset), on(opening.offset + opening.width)];
}

function byDistance<T extends { readonly id: string }>(
  list: ItemList,
  items: readonly T[],
  measure: (item: T) => Mm,
  reach: Mm,
): readonly Hit[] {
  return items
    .map((item) => ({ id: item.id, far: measure(item) }))
    .filter(({ far }) => far <= reach)
    .sort((a, b) => a.far - b.far)
    .map(({ id }) => ({ list, id }));
}

/** Returns fixtures and objects: those that contain the point before nearby ones; of several that contain it, the smallest first. */
function solids(level: Level, at: XY, reach: Mm): readonly Hit[] {
  const measured = (list: 'fixtures' | 'objects') =>
    level[list].map(({ id, shape }) => ({
      hit: { list, id } as const,
      far: signedBodyDistance(shapeBody(shape), at[0], at[1]),
      size: breadth(shape),
    }));
  return [...measured('fixtures'), ...measured('objects')]
    .filter(({ far }) => far <= reach)
    .sort((a, b) => Math.max(0, a.far) - Math.max(0, b.far) || a.size - b.size)
    .map(({ hit }) => hit);
}

function breadth(shape: Shape): number {
  const { minX, minY, maxX, maxY } = shapeBody(shape).extent;
  return (maxX - minX) * (maxY - minY);
}

function wallDistance({ from, to, thickness }: Wall, at: XY): Mm {
  return distance(at, nearestOnSegment(at, from, to)) - thickness / 2;
}

function openingDistance(level: Level, opening: Opening, at: XY): Mm {
  const ends = jambs(level, opening);
  const wall = level.walls.find(({ id }) => id === opening.wall);
  if (!ends || !wall) return Number.POSITIVE_INFINITY;
  return distance(at, nearestOnSegment(at, ends[0], ends[1])) - wall.thickness / 2;
}

function extentContains(outer: Extent, inner: Extent): boolean {
  return inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;
}

/** Returns the end of a wall that stays when the other is dragged; null for no such wall. */
export function wallOtherEnd(level: Level, id: string, end: 'from' | 'to'): XY | null {
  const wall = level.walls.find((each) => each.id === id);
  if (!wall) return null;
  return end === 'from' ? wall.to : wall.from;
}

/** Returns the reference point for moving an item, its middle; null for no such item. */
export function anchorOf(level: Level, id: string): XY | null {
  const solid = [...level.fixtures, ...level.objects].find((each) => each.id === id);
  if (solid) return shapeMiddle(solid.shape);
  const pinned = [...level.detectors, ...level.rooms].find((each) => each.id === id);
  if (pinned) return pinned.at;
  const wall = level.walls.find((each) => each.id === id);
  if (wall) return along(wall.from, wall.to, 0.5);
  const opening = level.openings.find((each) => each.id === id);
  const ends = opening && jambs(level, opening);
  return ends ? along(ends[0], ends[1], 0.5) : null;
}
