import { bodyDistance, type Extent, ringBody, ringExtent } from '../body.ts';
import { freeBoundary, type Grown, grown, type Scratch } from '../region/free-boundary.ts';
import type { Nearby } from '../region/nearby.ts';
import { linkRings, straightRing } from '../region/rings.ts';
import { ringSpace } from '../region/space.ts';
import { signedArea } from '../ring.ts';
import type { Face } from './faces.ts';
import type { Ring } from './types.ts';

/** The floor of a face: what its walls leave. Outer rings clockwise on screen, holes the other way; area in square mm. */
export interface Floor {
  readonly rings: readonly Ring[];
  readonly area: number;
}

const NO_FLOOR: Floor = { rings: [], area: 0 };

/** A face with no more corners than this may lie within one of the walls around it: a sliver, or the gap between two ends. */
const SLIVER_CORNERS = 4;

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
  if (near.some((body) => holdsRing(body, outer, extent))) return NO_FLOOR;
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
  if (outer.length > SLIVER_CORNERS) return false;
  const extent = ringExtent(outer);
  return own.some((ring) => holdsRing(grown(ringBody(ring), 0), outer, extent));
}

function holdsRing(one: Grown, ring: Ring, extent: Extent): boolean {
  if (!one.convex || one.minX > extent.minX || one.minY > extent.minY) return false;
  if (one.maxX < extent.maxX || one.maxY < extent.maxY) return false;
  return ring.every(([x, y]) => bodyDistance(one.body, x, y) === 0);
}

/** Wall bodies ready for cutting. */
export function standingBodies(bodies: readonly Ring[]): Grown[] {
  return bodies.map((body) => grown(ringBody(body), 0));
}
