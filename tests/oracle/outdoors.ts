import type { Level, Wall } from '../../geometry/plan/model.ts';
import { NO_FLOOR, type OracleRoom, standing, without } from './floors.ts';
import type { Geom, Geos, Point, Points } from './geos.ts';
import { jointsOf } from './joints.ts';
import { middle } from './plane.ts';
import type { Stretch } from './walls.ts';

/** The unbounded face. */
const OUTDOORS = -1;

/** "An unlabelled face that is nowhere wider than 305 mm between its walls", with 0.1 mm for rounding. */
const CAVITY = 305.1;

/** The faces on both sides of a segment. */
export type Sides = readonly number[];

/**
 * Returns the faces on both sides of each segment, from the rings that contain it. Points beside the segment are not used, because they may
 * all miss a face that is a sliver. A segment in no ring ends free, or connects one loop to another: both its sides are in one face.
 */
export function sidesOf(
  geos: Geos,
  segments: readonly (readonly [Point, Point])[],
  faces: readonly Points[][],
): Sides[] {
  const key = (a: Point, b: Point) => [a.join(' '), b.join(' ')].sort().join(', ');
  const found = new Map<string, number[]>();
  faces.forEach((rings, face) => {
    for (const ring of rings) {
      ring.forEach((a, i) => {
        const side = key(a, ring[(i + 1) % ring.length] as Point);
        found.set(side, [...(found.get(side) ?? []), face]);
      });
    }
  });
  const areas = faces.map((rings) => geos.area(rings));
  return segments.map(([a, b]) => {
    const own = found.get(key(a, b));
    if (own) return own.length > 1 ? own : [...own, OUTDOORS];
    const [x, y] = middle(a, b);
    return [areas.findIndex((area) => geos.holds(area, x, y))];
  });
}

/** Returns the faces that are outdoors: the unbounded one, and those reached from there through faces without floor and cavities. */
export function outdoors(
  geos: Geos,
  level: Level,
  walls: readonly Wall[],
  stretches: readonly Stretch[],
  sides: readonly Sides[],
  rooms: readonly OracleRoom[],
): ReadonlySet<number> {
  let thick: Geom[] | null = null;
  const lets = ({ face, floorArea }: OracleRoom) => {
    if (floorArea <= NO_FLOOR) return true;
    if (level.rooms.some(({ at }) => geos.holds(face, at[0], at[1]))) return false;
    thick ??= standing(geos, walls, jointsOf(stretches, CAVITY / 2), CAVITY / 2);
    return geos.measure(without(geos, face, thick)) <= NO_FLOOR;
  };
  const reached = new Set([OUTDOORS]);
  const asked = new Map<number, boolean>();
  for (let before = 0; before < reached.size; ) {
    before = reached.size;
    for (const pair of sides) {
      if (!pair.some((face) => reached.has(face))) continue;
      for (const face of pair) {
        if (!asked.has(face) && face !== OUTDOORS) asked.set(face, lets(rooms[face] as OracleRoom));
        if (asked.get(face)) reached.add(face);
      }
    }
  }
  return reached;
}

/** Returns whether a stretch is outside: it has the outdoors on one side, unless `side` says otherwise. Of several walls, "outside" wins. */
export function isOutside({ walls }: Stretch, faces: Sides, outdoors: ReadonlySet<number>): boolean {
  const bordersOutdoors = faces.some((face) => outdoors.has(face));
  return walls.some(({ side }) => side === 'outside' || (side === 'auto' && bordersOutdoors));
}
