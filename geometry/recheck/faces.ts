import type { XY } from '../plan/model.ts';
import type { Piece } from './noded.ts';
import { polygonize, type Ring, ringContains } from './planar-turf.ts';
import { direction, type Extent, edgesOf, extentContains, extentOf, middle, plus, quarter, ringArea } from './plane.ts';

/** A bounded face of the center-lines: the area that its ring encloses and no smaller ring does. */
export interface Face {
  readonly ring: Ring;
  readonly area: number;
  readonly extent: Extent;
}

/** A point this far beside a center-line is in the face on that side, mm. */
const BESIDE = 1e-6;

/**
 * Returns every ring that pieces of center-line enclose, the smallest first. Throws when turf returns an inconsistent
 * result.
 */
export function polygonized(pieces: readonly Piece[]): Face[] {
  const closing = withoutDangles(pieces);
  const rings = polygonize(closing.map(({ a, b }) => [a, b] as const)).filter((ring) => ring.length >= 3);
  const edges = new Set(closing.flatMap(({ a, b }) => [`${a} ${b}`, `${b} ${a}`]));
  const isClosed = rings.every((ring) => edgesOf(ring).every(([a, b]) => edges.has(`${a} ${b}`)));
  const faces = rings
    .map((ring) => ({ ring, area: ringArea(ring), extent: extentOf(ring) }))
    .filter(({ area }) => area > 0)
    .sort((one, two) => one.area - two.area);
  // Turf occasionally closes a ring by a line that does not exist, or misses a face; such results are rejected.
  if (isClosed && closing.every((piece) => separatesFaces(faces, piece) || isBridge(closing, piece))) return faces;
  throw new Error('turf does not find the faces of these walls');
}

/** Returns whether the piece has different faces on its two sides. */
function separatesFaces(faces: readonly Face[], piece: Piece): boolean {
  const [one, two] = facesBeside(faces, piece);
  return one !== two;
}

/** Returns whether the piece is a bridge: its ends are connected by nothing else, so both its sides are in one face. */
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

/** Removes dangles repeatedly: they enclose nothing, and turf fails on some of them. */
function withoutDangles(pieces: readonly Piece[]): readonly Piece[] {
  const degrees = new Map<XY, number>();
  for (const { a, b } of pieces) for (const node of [a, b]) degrees.set(node, (degrees.get(node) ?? 0) + 1);
  const remaining = pieces.filter(({ a, b }) => degrees.get(a) !== 1 && degrees.get(b) !== 1);
  return remaining.length === pieces.length ? remaining : withoutDangles(remaining);
}

/**
 * Returns the face that contains p, or null outdoors. Nested rings are resolved by size: the rings of free-standing
 * walls in a room are smaller than the room's.
 */
export function faceAt(faces: readonly Face[], p: XY): Face | null {
  return faces.find(({ extent, ring }) => extentContains(extent, p) && ringContains(ring, p)) ?? null;
}

/** Returns the faces on both sides of a piece; null is the outdoors. */
export function facesBeside(faces: readonly Face[], { a, b }: Piece): readonly [Face | null, Face | null] {
  const half = middle(a, b);
  // Measured from node to node, as the faces are: a short piece may deviate from its wall's direction.
  const aside = quarter(direction(a, b));
  return [faceAt(faces, plus(half, aside, BESIDE)), faceAt(faces, plus(half, aside, -BESIDE))];
}
