import { freeBoundary, grown, type Scratch } from '../arrangement/free-boundary.ts';
import type { Nearby } from '../arrangement/nearby.ts';
import { linkRings, straightRing } from '../arrangement/rings.ts';
import { ringSpace } from '../arrangement/space.ts';
import type { Grown } from '../arrangement/zone.ts';
import type { XY } from '../plan/model.ts';
import { ringBody } from '../plane/body.ts';
import { cross } from '../plane/point.ts';
import { signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { holdsRing, isCovered } from './covered.ts';
import type { Face } from './faces.ts';

/** The floor of a face: what its walls leave. Outer rings clockwise on screen, holes the other way; area in square mm. */
export interface Floor {
  readonly rings: readonly Ring[];
  readonly area: number;
}

const NO_FLOOR: Floor = { rings: [], area: 0 };

/** A face with no more corners than this may lie within one of the walls around it: a sliver, or the gap between two ends. */
const SLIVER_CORNERS = 4;

/** A wedge between two of a great many walls has no more corners than this, and more bodies than this stand in it. */
const WEDGE_CORNERS = 12;
const WEDGE_BODIES = 100;

/**
 * Takes the wall bodies out of a face of the centre-lines.
 *
 * @param bodies all that stands, grown by nothing; far ones are passed over
 * @param own what stands on the edges of the face, where that is known
 */
export function faceFloor(face: Face, bodies: Nearby, scratch: Scratch, own: readonly Ring[] = []): Floor {
  const [outer] = face.rings;
  if (!outer || isSliver(face, own)) return NO_FLOOR;
  const space = ringSpace(face.rings);
  const { extent } = space;
  const near = bodies.to(space);
  if (near.some((body) => holdsRing(body, outer, extent)) || isWedgeInWalls(outer, own, near)) return NO_FLOOR;
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

/** Whether a wall on an edge of a small face holds all of it: most slivers are found so, without a look at what else stands there. */
function isSliver({ rings: [outer = []] }: Face, own: readonly Ring[]): boolean {
  return outer.length <= SLIVER_CORNERS && own.some((ring) => outer.every((p) => isWithin(ring, p)));
}

/** Whether a convex ring, clockwise on screen, holds a point. */
function isWithin(ring: Ring, p: XY): boolean {
  return ring.every((a, i) => cross(a, ring[(i + 1) % ring.length] as XY, p) >= 0);
}

/**
 * Whether the walls on the edges of a small face and the ground about their ends hold all of it: so it is with nearly every wedge
 * where a great many walls nearly meet, each of which would cut all the others.
 */
function isWedgeInWalls(outer: Ring, own: readonly Ring[], near: readonly Grown[]): boolean {
  if (outer.length > WEDGE_CORNERS || near.length < WEDGE_BODIES) return false;
  return isCovered(outer, standingBodies(own), near);
}

/** Wall bodies ready for cutting. */
export function standingBodies(bodies: readonly Ring[]): Grown[] {
  return bodies.map((body) => grown(ringBody(body), 0));
}
