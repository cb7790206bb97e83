import type { Level, Wall } from '../../geometry/plan/model.ts';
import { type Geom, type Geos, GRIDS, type Point, type Points } from './geos.ts';
import { pieceBodies } from './mitred.ts';
import { apart, meeting, middle, minus, offSegment, plus, quarter, unit } from './plane.ts';

/** A stretch of wall between two places where walls meet. */
interface OraclePiece {
  /** The wall that stands for it: the thickest of those that run here, then the first id. */
  readonly wall: Wall;
  readonly walls: readonly Wall[];
  readonly ends: readonly [Point, Point];
  readonly outside: boolean;
  /** Together its body. */
  readonly parts: readonly Geom[];
}

export interface OracleRoom {
  /** Outer ring, then holes, of the face of the centre-lines. */
  readonly rings: readonly Points[];
  readonly face: Geom;
  readonly floor: Geom;
  /** The boundary of the floor. */
  readonly edge: Geom;
  readonly floorArea: number;
}

export interface OracleWalls {
  readonly pieces: readonly OraclePiece[];
  readonly rooms: readonly OracleRoom[];
}

/** Noding grid, mm: finer than a hundredth of what is compared, coarser than the rounding of a turned plan. */
const GRID = 1e-4;
/** Points that the drawing means to be one agree to this, mm. */
const SAME = 1e-3;
/** A wall shorter than this has no direction and is none, mm. */
const NO_LENGTH = 0.01;

/**
 * The walls of a level as the plan format, section 2, has them: centre-lines noded and turned into faces by GEOS, bodies
 * mitred, rooms set back to the wall faces.
 */
export function oracleWalls(geos: Geos, level: Level): OracleWalls {
  const walls = level.walls.filter(({ from, to }) => apart(from, to) > NO_LENGTH);
  if (walls.length === 0) return { pieces: [], rooms: [] };
  const segments = geos.noded(
    walls.map(({ from, to }) => [from, to]),
    GRID,
  );
  const exact = exactNodes(walls, segments);
  const faces = geos.faces(segments).map((rings) => rings.map((ring) => ring.map(exact)));
  const areas = faces.map((rings) => geos.repaired(geos.area(rings)));
  const stretches = segments.map(([a, b]) => stretchOf(walls, exact(a), exact(b)));
  const outdoors = (p: Point) => !areas.some((area) => geos.holds(area, p[0], p[1]));
  const bodies = pieceBodies(geos, stretches);
  const pieces = stretches.map((stretch, k): OraclePiece => {
    const parts = bodies[k];
    if (!parts) throw new Error('a piece of wall has no body');
    return { ...stretch, outside: isOutside(stretch, outdoors), parts };
  });
  const rooms = faces.map((rings, i) => roomOf(geos, rings, areas[i] as Geom, pieces));
  return { pieces, rooms: rooms.filter(({ floorArea }) => floorArea > 1) };
}

export interface Stretch {
  readonly wall: Wall;
  readonly walls: readonly Wall[];
  readonly ends: readonly [Point, Point];
}

/** Noded coordinates lie on a grid; this gives each node back its place: an end of a wall, or the crossing of two. */
function exactNodes(walls: readonly Wall[], segments: readonly (readonly [Point, Point])[]): (node: Point) => Point {
  const key = ([x, y]: Point) => `${Math.round(x / GRID)} ${Math.round(y / GRID)}`;
  const places = new Map<string, Point>();
  for (const node of segments.flat()) {
    if (!places.has(key(node))) places.set(key(node), exactPlace(walls, node));
  }
  return (node) => places.get(key(node)) ?? node;
}

function exactPlace(walls: readonly Wall[], node: Point): Point {
  for (const { from, to } of walls) {
    for (const end of [from, to]) if (apart(end, node) <= SAME) return end;
  }
  const here = walls.filter(({ from, to }) => offSegment(node, from, to) <= SAME);
  for (const s of here) {
    for (const t of here) {
      const cross = meeting(s.from, unit(minus(s.to, s.from)), t.from, unit(minus(t.to, t.from)));
      if (cross && apart(cross, node) <= SAME) return cross;
    }
  }
  return node;
}

function stretchOf(all: readonly Wall[], a: Point, b: Point): Stretch {
  const walls = all.filter(({ from, to }) => offSegment(a, from, to) <= SAME && offSegment(b, from, to) <= SAME);
  const [wall] = [...walls].sort((s, t) => t.thickness - s.thickness || (s.id < t.id ? -1 : 1));
  if (!wall) throw new Error(`no wall runs from ${a} to ${b}`);
  return { wall, walls, ends: [a, b] };
}

/** An outside wall has the unbounded face on one side, unless `side` says otherwise; of several, the greater distance counts. */
function isOutside({ walls, ends: [a, b] }: Stretch, outdoors: (p: Point) => boolean): boolean {
  const across = quarter(unit(minus(b, a)));
  const bordersOutdoors = outdoors(plus(middle(a, b), across, 2e-3)) || outdoors(plus(middle(a, b), across, -2e-3));
  return walls.some(({ side }) => side === 'outside' || (side === 'auto' && bordersOutdoors));
}

function roomOf(geos: Geos, rings: readonly Points[], face: Geom, pieces: readonly OraclePiece[]): OracleRoom {
  let floor = face;
  for (const { parts } of pieces) {
    for (const part of parts) if (geos.distance(face, part) === 0) floor = geos.difference(floor, part, GRIDS.slice(1));
  }
  return { rings, face, floor, edge: geos.boundary(floor), floorArea: geos.measure(floor) };
}
