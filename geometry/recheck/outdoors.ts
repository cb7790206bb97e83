import type { XY } from '../plan/model.ts';
import { type Body, wallBodies } from './bodies.ts';
import { type Face, faceAt, facesBeside } from './faces.ts';
import type { Piece } from './noded.ts';
import {
  cross,
  direction,
  edgesOf,
  extentHolds,
  extentOf,
  extentsMeet,
  plus,
  quarter,
  ringDistance,
  vector,
} from './plane.ts';

/** An unlabelled face nowhere wider than this between its walls is a cavity behind studs, mm. */
const CAVITY = 305;
/** What is left of a face counts as floor from about this width, mm: thinner slivers are rounding. */
const SLIVER = 0.05;
/** Places looked at along each side of a face before its leftover is worked out. */
const PROBES = 9;

/**
 * The faces that belong to the outdoors, and null for the unbounded one: those that can be reached from it over walls through
 * faces without floor and unlabelled cavities.
 */
export function outdoorFaces(
  pieces: readonly Piece[],
  faces: readonly Face[],
  sides: ReadonlyMap<Piece, readonly [Face | null, Face | null]>,
  labelled: ReadonlySet<Face>,
): Set<Face | null> {
  const bodies = wallBodies(pieces, () => true);
  // A tenth of a millimetre more: a cavity of exactly the limit is one.
  let thick: Body[] | null = null;
  const letsThrough = (face: Face) => {
    if (!hasFloor(faces, face, bodies)) return true;
    if (labelled.has(face)) return false;
    thick ??= wallBodies(pieces, () => true, CAVITY / 2 + SLIVER);
    return !hasFloor(faces, face, thick);
  };
  const known = new Map<Face, boolean>();
  const outdoors = new Set<Face | null>([null]);
  for (let before = 0; before < outdoors.size; ) {
    before = outdoors.size;
    for (const piece of pieces) {
      const [one, two] = sides.get(piece) as readonly [Face | null, Face | null];
      for (const [here, there] of [[one, two] as const, [two, one] as const]) {
        if (!outdoors.has(here) || there === null || outdoors.has(there)) continue;
        if (!known.has(there)) known.set(there, letsThrough(there));
        if (known.get(there)) outdoors.add(there);
      }
    }
  }
  return outdoors;
}

export const sidesOf = (pieces: readonly Piece[], faces: readonly Face[]) =>
  new Map(pieces.map((piece) => [piece, facesBeside(faces, piece)] as const));

/**
 * Whether anything is left of a face less the walls. A few places are tried first: most faces are rooms. Else every stretch of every wall
 * face is walked: whatever is left has one as its edge, and begins just beside it.
 */
function hasFloor(faces: readonly Face[], face: Face, bodies: readonly Body[]): boolean {
  const near = bodies.map(({ ring }) => ring).filter((ring) => extentsMeet(extentOf(ring), face.extent));
  const isFloor = (p: XY) =>
    extentHolds(face.extent, p) &&
    near.every((ring) => ringDistance(p, ring) > SLIVER / 2) &&
    faceAt(faces, p) === face;
  if (probes(face).some(isFloor)) return true;
  const edges = near.flatMap(edgesOf);
  return edges.some(([a, b]) => besideStretches(a, b, edges).some(isFloor));
}

function probes({ extent: [x0, y0, x1, y1] }: Face): XY[] {
  const steps = Array.from({ length: PROBES }, (_, i) => (i + 0.5) / PROBES);
  return steps.flatMap((s) => steps.map((t): XY => [x0 + (x1 - x0) * s, y0 + (y1 - y0) * t]));
}

/** The middles of the stretches into which the edges cut ab, a sliver aside on either hand. */
function besideStretches(a: XY, b: XY, edges: readonly (readonly [XY, XY])[]): XY[] {
  const along = vector(a, b);
  const shares = edges.flatMap(([c, d]) => {
    const turn = cross(along, vector(c, d));
    if (turn === 0) return [];
    const [s, t] = [cross(vector(a, c), vector(c, d)) / turn, cross(vector(a, c), along) / turn];
    return s > 0 && s < 1 && t >= 0 && t <= 1 ? [s] : [];
  });
  const stops = [0, ...shares, 1].sort((s, t) => s - t);
  const aside = quarter(direction(a, b));
  return stops.slice(1).flatMap((stop, i) => {
    const half = plus(a, along, (stop + (stops[i] as number)) / 2);
    return [plus(half, aside, SLIVER), plus(half, aside, -SLIVER)];
  });
}
