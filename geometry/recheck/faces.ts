import type { XY } from '../plan/model.ts';
import type { Piece } from './noded.ts';
import { polygonize, type Ring, ringHolds } from './planar-turf.ts';
import { direction, type Extent, edgesOf, extentHolds, extentOf, middle, plus, quarter, ringArea } from './plane.ts';

/** A bounded face of the centre-lines: what its ring encloses and no smaller ring does. */
export interface Face {
  readonly ring: Ring;
  readonly area: number;
  readonly extent: Extent;
}

/** Beside a centre-line by this much, mm, a point lies in the face on that side. */
const BESIDE = 1e-6;

/** Every ring that pieces of centre-line enclose, the smallest first. Throws where turf answers what cannot be. */
export function polygonized(pieces: readonly Piece[]): Face[] {
  const closing = withoutLooseEnds(pieces);
  const rings = polygonize(closing.map(({ a, b }) => [a, b] as const)).filter((ring) => ring.length >= 3);
  const known = new Set(closing.flatMap(({ a, b }) => [`${a} ${b}`, `${b} ${a}`]));
  const isClosed = rings.every((ring) => edgesOf(ring).every(([a, b]) => known.has(`${a} ${b}`)));
  const faces = rings
    .map((ring) => ({ ring, area: ringArea(ring), extent: extentOf(ring) }))
    .filter(({ area }) => area > 0)
    .sort((one, two) => one.area - two.area);
  // Now and then turf closes a ring by a line that is none, or misses a face: no answer is better than such a one.
  if (isClosed && closing.every((piece) => parts(faces, piece) || isBridge(closing, piece))) return faces;
  throw new Error('turf does not find the faces of these walls');
}

/** Whether a piece has another face on either side. */
function parts(faces: readonly Face[], piece: Piece): boolean {
  const [one, two] = facesBeside(faces, piece);
  return one !== two;
}

/** Whether nothing but this piece leads from one of its ends to the other: then it parts no faces. */
function isBridge(pieces: readonly Piece[], { a, b }: Piece): boolean {
  const reached = new Set<XY>([a]);
  const isHere = (piece: Piece) => (piece.a === a && piece.b === b) || (piece.a === b && piece.b === a);
  for (let before = 0; before < reached.size; ) {
    before = reached.size;
    for (const piece of pieces) {
      if (isHere(piece)) continue;
      if (reached.has(piece.a)) reached.add(piece.b);
      if (reached.has(piece.b)) reached.add(piece.a);
    }
  }
  return !reached.has(b);
}

/** The pieces without those that end on nothing, again and again: none of them encloses anything, and turf stumbles over some. */
function withoutLooseEnds(pieces: readonly Piece[]): readonly Piece[] {
  const degrees = new Map<XY, number>();
  for (const { a, b } of pieces) for (const node of [a, b]) degrees.set(node, (degrees.get(node) ?? 0) + 1);
  const kept = pieces.filter(({ a, b }) => degrees.get(a) !== 1 && degrees.get(b) !== 1);
  return kept.length === pieces.length ? kept : withoutLooseEnds(kept);
}

/**
 * The face that holds p, or null outdoors. Rings within rings are told apart by size: the rings of what stands free in a room are
 * smaller than the room's.
 */
export function faceAt(faces: readonly Face[], p: XY): Face | null {
  return faces.find(({ extent, ring }) => extentHolds(extent, p) && ringHolds(ring, p)) ?? null;
}

/** The faces on either side of a piece; null is the outdoors. */
export function facesBeside(faces: readonly Face[], { a, b }: Piece): readonly [Face | null, Face | null] {
  const half = middle(a, b);
  // From node to node, as the faces run: a short piece may turn a good deal from its wall.
  const aside = quarter(direction(a, b));
  return [faceAt(faces, plus(half, aside, BESIDE)), faceAt(faces, plus(half, aside, -BESIDE))];
}
