import { bodyDistance, type Extent, ringBody } from '../body.ts';
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

/** Takes the wall bodies out of a face of the centre-lines. `bodies` are grown by nothing; far ones are passed over. */
export function faceFloor(face: Face, bodies: Nearby, scratch: Scratch): Floor {
  const [outer] = face.rings;
  if (!outer) return { rings: [], area: 0 };
  const space = ringSpace(face.rings);
  const { extent } = space;
  const near = bodies.to(space);
  // A sliver between walls that lie on one another: most often one of them holds all of it.
  if (near.some((body) => holdsRing(body, outer, extent))) return { rings: [], area: 0 };
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

function holdsRing(one: Grown, ring: Ring, extent: Extent): boolean {
  if (!one.convex || one.minX > extent.minX || one.minY > extent.minY) return false;
  if (one.maxX < extent.maxX || one.maxY < extent.maxY) return false;
  return ring.every(([x, y]) => bodyDistance(one.body, x, y) === 0);
}

/** Wall bodies ready for cutting. */
export function standingBodies(bodies: readonly Ring[]): Grown[] {
  return bodies.map((body) => grown(ringBody(body), 0));
}
