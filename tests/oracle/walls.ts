import type { Level, Wall } from '../../geometry/plan/model.ts';
import { type Geom, type Geos, GRIDS, type Point, type Points } from './geos.ts';
import { joinsOf } from './joins.ts';
import { half, jointsOf, type OracleJoint, rectangle } from './joints.ts';
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

/** "An unlabelled face that is nowhere wider than 305 mm between its walls"; a tenth of a mm is left to rounding. */
const CAVITY = 305.1;
/** GEOS finds things that overlap up to 1e-14 apart; what only touches may be taken away as well, mm. */
const TOUCHING = 1e-6;
/** What is left of a face that walls fill, square mm. */
const NO_FLOOR = 1;

/**
 * The walls of a level as the plan format, section 2, has them: centre-lines noded and turned into faces by GEOS; a rectangle for
 * every wall and a joint for every two that meet; rooms are faces less all of these.
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
  const faces = geos.faces(segments).map((rings) => rings.map((ring) => ring.map(exact)));
  const areas = faces.map((rings) => geos.repaired(geos.area(rings)));
  const stretches = segments
    .map(([a, b]) => [exact(a), exact(b)] as const)
    .filter(([a, b]) => apart(a, b) > SAME)
    .map(([a, b]) => stretchOf(walls, jointless, a, b));
  const joints = jointsOf(stretches);
  const bodies = standing(geos, stretches, joints, 0);
  const rooms = faces.map((rings, i) => roomOf(geos, rings, areas[i] as Geom, bodies));
  const open = outdoors(geos, level, stretches, rooms);
  const outside = new Map(stretches.map((stretch) => [stretch, isOutside(stretch, open)]));
  return {
    pieces: [
      ...stretches.map((stretch): OraclePiece => {
        const { wall, ends } = stretch;
        const parts = [geos.area([rectangle(...ends, half(stretch))])];
        return { ...stretch, outside: outside.get(stretch) === true, parts, wall };
      }),
      ...joints.flatMap((joint) => jointPieces(geos, joint, outside)),
    ],
    rooms: rooms.filter(({ floorArea }) => floorArea > NO_FLOOR),
  };
}

function standing(geos: Geos, stretches: readonly Stretch[], joints: readonly OracleJoint[], more: number): Geom[] {
  return [
    ...stretches.map((stretch) => geos.area([rectangle(...stretch.ends, half(stretch) + more)])),
    ...joints.map(({ ring }) => geos.repaired(geos.area([ring]))),
  ];
}

/** A joint belongs to both its walls; one that a wall at the node holds adds nothing, unless it keeps more distance than that wall. */
function jointPieces(geos: Geos, joint: OracleJoint, outside: ReadonlyMap<Stretch, boolean>): OraclePiece[] {
  const { stretches, node, ring, within } = joint;
  const isOut = stretches.every((one) => outside.get(one));
  if (isOut ? within.stretches.some((one) => outside.get(one)) : within.wall || within.stretches.length > 0) return [];
  const walls = [...new Set(stretches.map(({ joined, wall }) => joined ?? wall))];
  const parts = [geos.area([ring])];
  return walls.map((wall) => ({ wall, walls: [wall], ends: [node, node], outside: isOut, parts }));
}

/** Whether a point lies outdoors: in no face, or in one that is reached from there through faces without floor and cavities. */
function outdoors(
  geos: Geos,
  level: Level,
  stretches: readonly Stretch[],
  rooms: readonly OracleRoom[],
): (p: Point) => boolean {
  const faceAt = (p: Point) => rooms.findIndex(({ face }) => geos.holds(face, p[0], p[1]));
  const sides = stretches.map(({ ends: [a, b] }) => {
    const across = quarter(unit(minus(b, a)));
    return [2e-3, -2e-3].map((off) => faceAt(plus(middle(a, b), across, off)));
  });
  let thick: Geom[] | null = null;
  const lets = ({ face, floorArea }: OracleRoom) => {
    if (floorArea <= NO_FLOOR) return true;
    if (level.rooms.some(({ at }) => geos.holds(face, at[0], at[1]))) return false;
    thick ??= standing(geos, stretches, jointsOf(stretches, CAVITY / 2), CAVITY / 2);
    return geos.measure(without(geos, face, thick)) <= NO_FLOOR;
  };
  const reached = new Set([-1]);
  const asked = new Map<number, boolean>();
  for (let before = 0; before < reached.size; ) {
    before = reached.size;
    for (const pair of sides) {
      if (!pair.some((face) => reached.has(face))) continue;
      for (const face of pair) {
        if (!asked.has(face) && face >= 0) asked.set(face, lets(rooms[face] as OracleRoom));
        if (asked.get(face)) reached.add(face);
      }
    }
  }
  return (p) => reached.has(faceAt(p));
}

export interface Stretch {
  readonly wall: Wall;
  readonly walls: readonly Wall[];
  readonly ends: readonly [Point, Point];
  /** The wall whose thickness its joints have; null where it makes none. */
  readonly joined: Wall | null;
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

function stretchOf(all: readonly Wall[], jointless: ReadonlySet<Wall>, a: Point, b: Point): Stretch {
  const walls = all.filter(({ from, to }) => offSegment(a, from, to) <= SAME && offSegment(b, from, to) <= SAME);
  const thickest = [...walls].sort((s, t) => t.thickness - s.thickness || (s.id < t.id ? -1 : 1));
  const [wall] = thickest;
  if (!wall) throw new Error(`no wall runs from ${a} to ${b}`);
  return { wall, walls, ends: [a, b], joined: thickest.find((one) => !jointless.has(one)) ?? null };
}

/** An outside wall has the outdoors on one side, unless `side` says otherwise; of several, the greater distance counts. */
function isOutside({ walls, ends: [a, b] }: Stretch, outdoors: (p: Point) => boolean): boolean {
  const across = quarter(unit(minus(b, a)));
  const bordersOutdoors = outdoors(plus(middle(a, b), across, 2e-3)) || outdoors(plus(middle(a, b), across, -2e-3));
  return walls.some(({ side }) => side === 'outside' || (side === 'auto' && bordersOutdoors));
}

function roomOf(geos: Geos, rings: readonly Points[], face: Geom, bodies: readonly Geom[]): OracleRoom {
  const floor = without(geos, face, bodies);
  return { rings, face, floor, edge: geos.boundary(floor), floorArea: geos.measure(floor) };
}

function without(geos: Geos, face: Geom, bodies: readonly Geom[]): Geom {
  let floor = face;
  for (const body of bodies)
    if (geos.distance(face, body) <= TOUCHING) floor = geos.difference(floor, body, GRIDS.slice(1));
  return floor;
}
