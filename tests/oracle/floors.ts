import type { Wall } from '../../geometry/plan/model.ts';
import { type Geom, type Geos, GRIDS, type Points } from './geos.ts';
import { half, type OracleJoint, rectangle } from './joints.ts';

export interface OracleRoom {
  /** The face of the center-lines: outer ring, then holes. */
  readonly rings: readonly Points[];
  readonly face: Geom;
  readonly floor: Geom;
  /** The boundary of the floor. */
  readonly edge: Geom;
  readonly floorArea: number;
}

/** GEOS reports areas as overlapping that are up to 1e-14 apart; areas that only touch may be subtracted as well, mm. */
const TOUCHING = 1e-6;
/** A face with a smaller remainder is filled by walls, mm². */
export const NO_FLOOR = 1;

/**
 * Returns all solids: the rectangle of every wall along its own center-line (not from node to node, because a node may be slightly beside it),
 * and the joints. @param more by how much every wall is thicker on either side, mm
 */
export function standing(geos: Geos, walls: readonly Wall[], joints: readonly OracleJoint[], more = 0): Geom[] {
  return [
    ...walls.map((wall) => geos.area([rectangle(wall.from, wall.to, half(wall) + more)])),
    ...joints.map(({ ring }) => geos.repaired(geos.area([ring]))),
  ];
}

export function roomOf(geos: Geos, rings: readonly Points[], face: Geom, bodies: readonly Geom[]): OracleRoom {
  const floor = without(geos, face, bodies);
  return { rings, face, floor, edge: geos.boundary(floor), floorArea: geos.measure(floor) };
}

/** Returns the part of a face that none of the bodies covers. */
export function without(geos: Geos, face: Geom, bodies: readonly Geom[]): Geom {
  let floor = face;
  for (const body of bodies)
    if (geos.distance(floor, body) <= TOUCHING) floor = geos.difference(floor, body, GRIDS.slice(1));
  return floor;
}
