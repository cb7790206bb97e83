import type { Level, Wall } from '../../geometry/plan/model.ts';
import { NO_FLOOR, type OracleRoom, roomOf, standing } from './floors.ts';
import type { Geom, Geos, Point } from './geos.ts';
import { joinsOf } from './joins.ts';
import { half, jointsOf, type OracleJoint, rectangle } from './joints.ts';
import { isOutside, outdoors, type Sides, sidesOf } from './outdoors.ts';
import { apart, meeting, minus, nearest, offSegment, unit } from './plane.ts';

/** A stretch of wall between two places where walls meet. */
interface OraclePiece {
  /** The wall that represents it: the thickest of those that coincide here, then the first id. */
  readonly wall: Wall;
  readonly walls: readonly Wall[];
  readonly ends: readonly [Point, Point];
  readonly outside: boolean;
  /** Areas that together are its body. */
  readonly parts: readonly Geom[];
}

export interface OracleWalls {
  readonly pieces: readonly OraclePiece[];
  readonly rooms: readonly OracleRoom[];
}

/** Noding grid, mm: finer than a hundredth of the compared tolerances, coarser than the rounding of a rotated plan. */
const GRID = 1e-4;
/** Points that the drawing intends to be the same agree within this, mm. */
const SAME = 1e-3;
/** A shorter wall has no direction and is ignored, mm. */
const NO_LENGTH = 0.01;

/**
 * Returns the walls of a level by the rules of geometry/README.md, "How a level is built": center-lines noded and traced into faces by GEOS;
 * a rectangle for every wall and a joint for every two that meet; rooms are faces minus all of these.
 */
export function oracleWalls(geos: Geos, level: Level): OracleWalls {
  const drawn = level.walls.filter(({ from, to }) => apart(from, to) > NO_LENGTH);
  if (drawn.length === 0) return { pieces: [], rooms: [] };
  const joins = joinsOf(drawn);
  const walls = [...drawn, ...joins.map(({ wall }) => wall)];
  const jointless = new Set(joins.filter(({ across }) => across).map(({ wall }) => wall));
  const segments = geos.noded(
    walls.map(({ from, to }) => [from, to]),
    GRID,
  );
  const exact = exactNodes(walls, segments);
  const traced = geos.faces(segments);
  const faces = traced.map((rings) => rings.map((ring) => ring.map(exact)));
  const areas = faces.map((rings) => geos.repaired(geos.area(rings)));
  const sides = sidesOf(geos, segments, traced);
  const sided = segments
    .map(([a, b], i) => ({ a: exact(a), b: exact(b), faces: sides[i] as Sides }))
    .filter(({ a, b }) => apart(a, b) > SAME)
    .map(({ a, b, faces }) => [stretchOf(walls, jointless, a, b), faces] as const);
  const stretches = sided.map(([stretch]) => stretch);
  const joints = jointsOf(stretches);
  const bodies = standing(geos, walls, joints);
  const rooms = faces.map((rings, i) => roomOf(geos, rings, areas[i] as Geom, bodies));
  const open = outdoors(geos, level, walls, stretches, sides, rooms);
  const outside = new Map(sided.map(([stretch, faces]) => [stretch, isOutside(stretch, faces, open)]));
  return {
    pieces: [
      ...stretches.map((stretch): OraclePiece => {
        const { wall, feet } = stretch;
        const parts = [geos.area([rectangle(...feet, half(wall))])];
        return { ...stretch, outside: outside.get(stretch) === true, parts, wall };
      }),
      ...joints.flatMap((joint) => jointPieces(geos, joint, outside)),
    ],
    rooms: rooms.filter(({ floorArea }) => floorArea > NO_FLOOR),
  };
}

/** Returns the pieces of a joint, one for each of its walls; none if a wall at the node contains it and requires at least its distance. */
function jointPieces(geos: Geos, joint: OracleJoint, outside: ReadonlyMap<Stretch, boolean>): OraclePiece[] {
  const { stretches, walls: both, node, ring, within } = joint;
  const isOut = stretches.every((one) => outside.get(one));
  if (isOut ? within.stretches.some((one) => outside.get(one)) : within.wall || within.stretches.length > 0) return [];
  const walls = [...new Set(both)];
  const parts = [geos.area([ring])];
  return walls.map((wall) => ({ wall, walls: [wall], ends: [node, node], outside: isOut, parts }));
}

export interface Stretch {
  readonly wall: Wall;
  readonly walls: readonly Wall[];
  readonly ends: readonly [Point, Point];
  /** The ends on the center-line of that wall: a node may be slightly beside it. */
  readonly feet: readonly [Point, Point];
  /** The walls that make joints at its ends, the thickest first. */
  readonly joined: readonly Wall[];
}

/** Returns a function from noded coordinates, which are on a grid, to the exact node: an end of a wall, or the crossing of two. */
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

function stretchOf(all: readonly Wall[], jointless: ReadonlySet<Wall>, a: Point, b: Point): Stretch {
  const walls = all.filter(({ from, to }) => offSegment(a, from, to) <= SAME && offSegment(b, from, to) <= SAME);
  const thickest = [...walls].sort((s, t) => t.thickness - s.thickness || (s.id < t.id ? -1 : 1));
  const [wall] = thickest;
  if (!wall) throw new Error(`no wall runs from ${a} to ${b}`);
  const foot = (p: Point) => nearest(p, wall.from, wall.to);
  const joined = thickest.filter((one) => !jointless.has(one));
  return { wall, walls, ends: [a, b], feet: [foot(a), foot(b)], joined };
}
