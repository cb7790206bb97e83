import type { XY } from '../plan/model.ts';
import { type Body, wallBodies } from './bodies.ts';
import { type Face, faceAt, facesBeside } from './faces.ts';
import type { Piece } from './noded.ts';
import {
  cross,
  direction,
  edgesOf,
  extentContains,
  extentOf,
  extentsMeet,
  plus,
  quarter,
  ringDistance,
  vector,
} from './plane.ts';

/** An unlabeled face nowhere wider than this between its walls is a cavity behind studs, mm. */
const CAVITY = 305;
/** The remainder of a face counts as floor from about this width, mm; narrower remainders are rounding. */
const SLIVER = 0.05;
/** Number of points tested along each side of a face before its remainder is computed. */
const PROBES = 9;

/**
 * Returns the faces that belong to the outdoors, and null for the unbounded one: those reachable from it across walls
 * through faces without floor and unlabeled cavities.
 */
export function outdoorFaces(
  pieces: readonly Piece[],
  faces: readonly Face[],
  sides: ReadonlyMap<Piece, readonly [Face | null, Face | null]>,
  labeled: ReadonlySet<Face>,
): Set<Face | null> {
  const bodies = wallBodies(pieces, () => true);
  // 0.1 mm more, so that a cavity of exactly the limit counts as one.
  let thick: Body[] | null = null;
  const letsThrough = (face: Face) => {
    if (!hasFloor(faces, face, bodies)) return true;
    if (labeled.has(face)) return false;
    thick ??= wallBodies(pieces, () => true, CAVITY / 2 + SLIVER);
    return !hasFloor(faces, face, thick);
  };
  const cache = new Map<Face, boolean>();
  const outdoors = new Set<Face | null>([null]);
  for (let before = 0; before < outdoors.size; ) {
    before = outdoors.size;
    for (const piece of pieces) {
      const [one, two] = sides.get(piece) as readonly [Face | null, Face | null];
      for (const [here, there] of [[one, two] as const, [two, one] as const]) {
        if (!outdoors.has(here) || there === null || outdoors.has(there)) continue;
        if (!cache.has(there)) cache.set(there, letsThrough(there));
        if (cache.get(there)) outdoors.add(there);
      }
    }
  }
  return outdoors;
}

export const sidesOf = (pieces: readonly Piece[], faces: readonly Face[]) =>
  new Map(pieces.map((piece) => [piece, facesBeside(faces, piece)] as const));

/**
 * Returns whether anything remains of a face minus the walls. A few points are tried first because most faces are
 * rooms. Otherwise every stretch of every wall face is tested: any remainder is bounded by such a stretch and begins
 * right next to it.
 */
function hasFloor(faces: readonly Face[], face: Face, bodies: readonly Body[]): boolean {
  const near = bodies.map(({ ring }) => ring).filter((ring) => extentsMeet(extentOf(ring), face.extent));
  const isFloor = (p: XY) =>
    extentContains(face.extent, p) &&
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

/** Returns the middles of the stretches into which the edges split ab, without a sliver at either end. */
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
