import { ringBody } from '../body.ts';
import { freeBoundary, type Grown, grown, type Scratch } from '../region/free-boundary.ts';
import type { Nearby } from '../region/nearby.ts';
import { freeArea, linkRings, straightRing } from '../region/rings.ts';
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
  if (!face.rings[0]) return { rings: [], area: 0 };
  const space = ringSpace(face.rings);
  const { extent } = space;
  const parts = freeBoundary(bodies.to(space), space, scratch);
  const rings = linkRings(parts)
    .map(straightRing)
    .filter((ring) => ring.length >= 3);
  const area = freeArea(parts, extent.minX, extent.minY);
  return { rings: rings.sort((a, b) => signedArea(b) - signedArea(a)), area };
}

/** Wall bodies ready for cutting. */
export function standingBodies(bodies: readonly Ring[]): Grown[] {
  return bodies.map((body) => grown(ringBody(body), 0));
}
