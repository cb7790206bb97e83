import type { XY } from '../plan/model.ts';
import type { Piece } from './noded.ts';
import { polygonize, type Ring, ringHolds } from './planar-turf.ts';
import { type Extent, extentHolds, extentOf, plus, quarter, ringArea } from './plane.ts';

/** A bounded face of the centre-lines: what its ring encloses and no smaller ring does. */
export interface Face {
  readonly ring: Ring;
  readonly area: number;
  readonly extent: Extent;
}

/** Beside a centre-line by this much, mm, a point lies in the face on that side. */
const BESIDE = 1e-4;

/** Every ring that pieces of centre-line enclose, the smallest first. */
export function polygonized(pieces: readonly Piece[]): Face[] {
  return polygonize(pieces.map(({ a, b }) => [a, b] as const))
    .filter((ring) => ring.length >= 3)
    .map((ring) => ({ ring, area: ringArea(ring), extent: extentOf(ring) }))
    .filter(({ area }) => area > 0)
    .sort((one, two) => one.area - two.area);
}

/**
 * The face that holds p, or null outdoors. Rings within rings are told apart by size: the rings of what stands free in a room are
 * smaller than the room's.
 */
export function faceAt(faces: readonly Face[], p: XY): Face | null {
  return faces.find(({ extent, ring }) => extentHolds(extent, p) && ringHolds(ring, p)) ?? null;
}

/** The faces on either side of a piece; null is the outdoors. */
export function facesBeside(faces: readonly Face[], { a, b, lines }: Piece): readonly [Face | null, Face | null] {
  const along = (lines[0] as Piece['lines'][number]).along;
  const half: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const aside = quarter(along);
  return [faceAt(faces, plus(half, aside, BESIDE)), faceAt(faces, plus(half, aside, -BESIDE))];
}

/** The rings that lie in a face and are not it. */
export function ringsWithin(faces: readonly Face[], face: Face): Ring[] {
  return faces
    .filter((other) => other.area < face.area && ringHolds(face.ring, innerPoint(other)))
    .map(({ ring }) => ring);
}

/** A point just inside the ring, beside its longest edge. */
function innerPoint({ ring }: Face): XY {
  let best: XY = ring[0] as XY;
  let longest = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as XY;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length <= longest) return;
    const aside: XY = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
    const half: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const inner = [plus(half, aside, BESIDE), plus(half, aside, -BESIDE)].find((p) => ringHolds(ring, p));
    if (!inner) return;
    best = inner;
    longest = length;
  });
  return best;
}
