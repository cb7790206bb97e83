import type { Mm, XY } from '../plan/model.ts';
import { type Body, wallBodies } from './bodies.ts';
import { type Face, faceAt, facesBeside, ringsWithin } from './faces.ts';
import type { Piece } from './noded.ts';
import { type Ring, ringLess } from './planar-turf.ts';
import { extentOf, extentsMeet, outlineDistance, ringArea, ringDistance, ringLength } from './plane.ts';

/** An unlabelled face nowhere wider than this between its walls is a cavity behind studs, mm. */
const CAVITY = 305;
/** What is left of a face counts as floor from this width, mm: thinner slivers are rounding. */
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

/** Whether anything is left of a face less the walls. A few places are tried first: most faces are rooms. */
function hasFloor(faces: readonly Face[], face: Face, bodies: readonly Body[]): boolean {
  const near = bodies.map(({ ring }) => ring).filter((ring) => extentsMeet(extentOf(ring), face.extent));
  if (probes(face).some((p) => faceAt(faces, p) === face && isFree(p, face, near))) return true;
  return ringLess(face.ring, [...ringsWithin(faces, face), ...near]).some(isWide);
}

const isFree = (p: XY, face: Face, bodies: readonly Ring[]) =>
  outlineDistance(p, face.ring) > SLIVER && bodies.every((ring) => ringDistance(p, ring) > SLIVER);

function probes({ extent: [x0, y0, x1, y1] }: Face): XY[] {
  const steps = Array.from({ length: PROBES }, (_, i) => (i + 0.5) / PROBES);
  return steps.flatMap((s) => steps.map((t): XY => [x0 + (x1 - x0) * s, y0 + (y1 - y0) * t]));
}

/** Twice the area by the length of the outline: about the width of a long strip. */
function isWide([outer, ...holes]: readonly Ring[]): boolean {
  if (!outer || outer.length < 3) return false;
  const area = ringArea(outer) - holes.reduce((sum: Mm, hole) => sum + ringArea(hole), 0);
  const length = [outer, ...holes].reduce((sum, ring) => sum + ringLength(ring), 0);
  return (2 * area) / length > SLIVER;
}
