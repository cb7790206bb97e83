import { freeBoundary, type Scratch } from '../arrangement/free-boundary.ts';
import { linkRings } from '../arrangement/link-rings.ts';
import type { NearbyZones } from '../arrangement/nearby-zones.ts';
import { OutlineStore } from '../arrangement/outline-store.ts';
import { straightRing } from '../arrangement/rings.ts';
import { ringSpace } from '../arrangement/space.ts';
import { type GrownZone, growZone } from '../arrangement/zone.ts';
import type { XY } from '../plan/model.ts';
import { ringBody } from '../plane/body.ts';
import { cross } from '../plane/point.ts';
import { signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { containsRing, isCovered } from './covered.ts';
import type { Face } from './faces.ts';

/** The floor of a face: its area minus the walls. Outer rings clockwise on screen, holes the other way; area in mm². */
export interface Floor {
  readonly rings: readonly Ring[];
  readonly area: number;
}

const NO_FLOOR: Floor = { rings: [], area: 0 };

/** A face with at most this many corners may lie inside one of its walls: a sliver, or the gap between two ends. */
const SLIVER_CORNERS = 4;

/** A wedge between two of very many walls has at most this many corners and more than this many bodies nearby. */
const WEDGE_CORNERS = 12;
const WEDGE_BODIES = 100;

/**
 * Returns a face of the center-lines minus the wall bodies.
 *
 * @param bodies all solids as zones; distant ones are skipped
 * @param own the bodies on the edges of the face, where known
 */
export function faceFloor(face: Face, bodies: NearbyZones, scratch: Scratch, own: readonly Ring[] = []): Floor {
  const [outer] = face.rings;
  if (!outer || isSliver(face, own)) return NO_FLOOR;
  const space = ringSpace(face.rings);
  const { extent } = space;
  const near = bodies.to(space);
  if (near.some((body) => containsRing(body, outer, extent)) || isWedgeInWalls(outer, own, near)) return NO_FLOOR;
  const parts = freeBoundary(near, space, scratch);
  const rings = linkRings(parts)
    .map(straightRing)
    .filter((ring) => ring.length >= 3);
  const area = Math.max(
    0,
    rings.reduce((sum, ring) => sum + signedArea(ring), 0),
  );
  return { rings: rings.sort((a, b) => signedArea(b) - signedArea(a)), area };
}

/**
 * Returns whether one wall on an edge of a small face contains all of it: finds most slivers without looking at other
 * bodies.
 */
function isSliver({ rings: [outer = []] }: Face, own: readonly Ring[]): boolean {
  return outer.length <= SLIVER_CORNERS && own.some((ring) => outer.every((p) => ringContainsConvex(ring, p)));
}

/** Returns whether a convex ring, clockwise on screen, contains a point. */
function ringContainsConvex(ring: Ring, p: XY): boolean {
  return ring.every((a, i) => cross(a, ring[(i + 1) % ring.length] as XY, p) >= 0);
}

/**
 * Returns whether the bodies on the edges of a small face and around its corners cover it, as for nearly every wedge
 * where very many walls nearly meet; cutting would be quadratic there.
 */
function isWedgeInWalls(outer: Ring, own: readonly Ring[], near: readonly GrownZone[]): boolean {
  if (outer.length > WEDGE_CORNERS || near.length < WEDGE_BODIES) return false;
  return isCovered(outer, solidZones(own), near);
}

/** Returns wall bodies as zones with distance 0. */
export function solidZones(bodies: readonly Ring[]): GrownZone[] {
  const store = new OutlineStore();
  return bodies.map((body) => growZone(ringBody(body), 0, null, store));
}
