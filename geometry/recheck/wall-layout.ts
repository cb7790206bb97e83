import type { Level, Mm, Opening, RoomLabel, XY } from '../plan/model.ts';
import { type Body, rectangle, wallBodies } from './bodies.ts';
import { alongLine, centerLines, type Line, SAME } from './center-lines.ts';
import { type Face, faceAt, polygonized } from './faces.ts';
import { nodedPieces, type Piece } from './noded.ts';
import { outdoorFaces, sidesOf } from './outdoors.ts';
import type { Ring } from './planar-turf.ts';
import { apart, cross, direction, nearestOnSegment, plus, ringDistance, segmentDistance, vector } from './plane.ts';

/** An opening in its wall. */
interface Hole {
  readonly opening: Opening;
  readonly ring: Ring;
  /** The opening at the depth of its own wall, if a thicker wall along a part of it makes `ring` deeper; else null. */
  readonly own: Ring | null;
  readonly outside: boolean;
}

/** The faces on both sides of each piece. */
type Sides = ReturnType<typeof sidesOf>;

/** The walls of a level, computed a second time. */
export interface WallLayout {
  readonly bodies: readonly Body[];
  readonly holes: readonly Hole[];
  /** The room that contains a point: a face minus the bodies of walls and joints; null in a wall and outdoors. */
  readonly roomAt: (p: XY) => Face | null;
  readonly labelsIn: (face: Face) => readonly RoomLabel[];
}

/**
 * A wall whose center-line is within this distance of an opening's coincides with it, mm: walls drawn on each other are
 * rarely exactly aligned.
 */
const COINCIDENT = 12.7;
/** Sine of the angle between two walls below which they are parallel: about 6 degrees. */
const PARALLEL_SINE = 0.1;

/** A label this close to a center-line is on it, mm: more than the rounding of rotated coordinates. */
const ON_LINE = 1e-6;

/** Levels with more walls are not computed a second time, because every pair of walls is tested. */
const MOST_WALLS = 1200;

/** Returns the wall bodies, openings and faces of a level. Throws where turf does, or when limits are exceeded. */
export function wallLayout(level: Level): WallLayout {
  if (level.walls.length > MOST_WALLS) throw new Error(`more than ${MOST_WALLS} walls on one level`);
  const lines = centerLines(level.walls);
  const pieces = nodedPieces(lines);
  const faces = polygonized(pieces);
  const sides = sidesOf(pieces, faces);
  const labels = new Map<Face, RoomLabel[]>();
  for (const label of level.rooms) {
    for (const face of facesOf(label, pieces, faces, sides)) labels.set(face, [...(labels.get(face) ?? []), label]);
  }
  const outdoors = outdoorFaces(pieces, faces, sides, new Set(labels.keys()));
  const isOutside = (piece: Piece, of: readonly Line[] = piece.lines) => {
    const [one, two] = sides.get(piece) as readonly [Face | null, Face | null];
    return of.some(({ wall: { side } }) =>
      side === 'auto' ? outdoors.has(one) || outdoors.has(two) : side === 'outside',
    );
  };
  const bodies = wallBodies(pieces, isOutside);
  const inWall = (p: XY) => bodies.some(({ ring }) => ringDistance(p, ring) === 0);
  return {
    bodies,
    holes: level.openings.flatMap((opening) => holeOf(opening, lines, pieces, isOutside)),
    roomAt: (p) => (inWall(p) ? null : faceAt(faces, p)),
    labelsIn: (face) => labels.get(face) ?? [],
  };
}

/** Returns the faces that a label names: the one around it; for a label on a center-line those on both sides, as it may mean either. */
function facesOf({ at }: RoomLabel, pieces: readonly Piece[], faces: readonly Face[], sides: Sides): ReadonlySet<Face> {
  const under = pieces.filter(({ a, b }) => segmentDistance(at, a, b) <= ON_LINE);
  const found = under.length > 0 ? under.flatMap((piece) => sides.get(piece) ?? []) : [faceAt(faces, at)];
  return new Set(found.filter((face) => face !== null));
}

function holeOf(
  opening: Opening,
  lines: readonly Line[],
  pieces: readonly Piece[],
  isOutside: (piece: Piece) => boolean,
): Hole[] {
  const host = lines.find(({ wall }) => wall.id === opening.wall);
  if (!host) return [];
  const [from, to] = [opening.offset, opening.offset + opening.width];
  const [a, b] = [plus(host.wall.from, host.along, from), plus(host.wall.from, host.along, to)];
  const under = pieces.filter((piece) => piece.lines.includes(host) && overlap(host, piece, from, to) > SAME);
  const half = Math.max(
    host.half,
    ...lines.filter((line) => line.drawn && coincidesWith(line, a, b)).map((line) => line.half),
  );
  const ring = rectangle(a, b, host.along, half);
  const own = half > host.half ? rectangle(a, b, host.along, host.half) : null;
  return [{ opening, ring, own, outside: under.some((piece) => isOutside(piece)) }];
}

function overlap(host: Line, piece: Piece, from: Mm, to: Mm): Mm {
  const [s, t] = [alongLine(host, piece.a), alongLine(host, piece.b)].sort((m, n) => m - n) as [Mm, Mm];
  return Math.min(to, t) - Math.max(from, s);
}

/** Returns whether a wall coincides with any part of the stretch ab, exactly or nearly. */
function coincidesWith(line: Line, a: XY, b: XY): boolean {
  const along = direction(a, b);
  if (Math.abs(cross(line.along, along)) > PARALLEL_SINE) return false;
  const ends = [line.from, line.to].map((end) => nearestOnSegment(end, a, b)) as [XY, XY];
  if (apart(...ends) <= SAME) return false;
  const [first, last] = ends.map((p) => cross(line.along, vector(line.from, p))) as [Mm, Mm];
  return first > 0 !== last > 0 || Math.min(Math.abs(first), Math.abs(last)) <= COINCIDENT;
}
