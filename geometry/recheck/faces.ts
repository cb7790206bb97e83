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
