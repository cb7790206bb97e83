import type { Mm, Wall, XY } from '../plan/model.ts';
import { bodyDistance, ringBody } from '../plane/body.ts';
import { along, distance, nearestParameter } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';
import type { Faces } from './faces.ts';
import { type GraphEdge, mainWall, meetingOf, type Run, type WallGraph } from './graph.ts';
import { type Arm, crowdedRing, jointRing } from './joints.ts';
import { halfOf, type Rectangle, reachOf, rectangle, rectangleHolds, rectangleRing } from './rectangles.ts';
import { type CentreLine, CROWD, SNAP, TOUCH } from './touch.ts';

/** Up to this many coinciding walls keep their own bodies; beyond, one body contains the rest. */
const MOST_SIDE_BY_SIDE = 8;

/** Points closer than this are the same point, mm. */
const SAME_POINT: Mm = 1e-9;

/** A node closer than this to its position on a wall lies on the wall, mm. */
const SAME_PLACE: Mm = 1e-6;

/** Walls whose directions differ by less are parallel, radians. */
const SAME_WAY = 1e-5;

/** An edge, and those of its walls that one body or one side of a joint represents. */
export interface Part {
  readonly edge: number;
  readonly walls: readonly Wall[];
}

/** The body of one wall on one edge; it also represents the walls whose bodies it contains. */
export interface Stretch extends Part {
  readonly wall: Wall;
  readonly ring: Ring;
}

/** The joint of two walls at a node, or of all walls at a node of very high degree. */
export interface Joint {
  readonly node: number;
  /** The parts that it joins. */
  readonly parts: readonly Part[];
  readonly walls: readonly Wall[];
  readonly ring: Ring;
  /** Whether a wall at the node contains all of it, so that it adds nothing to the solid area. */
  readonly isHeld: boolean;
  /** The parts whose body on the edge contains all of it. */
  readonly heldBy: readonly Part[];
}

/** Everything solid: a full rectangle with square ends for every wall, and a joint for every two walls that meet. */
export interface Bodies {
  /** Per edge. */
  readonly stretches: readonly Stretch[];
  readonly joints: readonly Joint[];
  /** Whole walls and joints, for the computation of the floors. */
  readonly standing: readonly Ring[];
}

/**
 * Returns the bodies of all walls.
 *
 * @param extra how much thicker every wall is on either side than drawn, mm
 */
export function wallBodies(graph: WallGraph, { around }: Pick<Faces, 'around'>, more: Mm = 0): Bodies {
  const stretches: Stretch[] = [];
  graph.edges.forEach(({ runs }, edge) => {
    for (const { walls, body } of sideBySide(runs, more)) {
      stretches.push({ edge, wall: walls[0] as Wall, walls, ring: rectangleRing(body) });
    }
  });
  const joints: Joint[] = [];
  around.forEach((half, node) => {
    addJointsAt(joints, graph, node, half, more);
  });
  const standing: Ring[] = [];
  for (const lines of graph.spans) {
    for (const { body } of sideBySide(lines.map(wholeLine), more)) standing.push(rectangleRing(body));
  }
  standing.push(...bentEdges(graph));
  for (const { isHeld, ring } of joints) if (!isHeld) standing.push(ring);
  return { stretches, joints, standing };
}

/**
 * A face runs from node to node, and a node may be beside its wall by up to the node tolerance, farther than a wall
 * without thickness
 * reaches. Returns a minimal body for such edges, so that every face is bounded by solids.
 */
function bentEdges({ nodes, edges }: WallGraph): Ring[] {
  return edges.flatMap(({ from, to, runs }) => {
    const [a, b] = [nodes[from] as XY, nodes[to] as XY];
    const isBent = runs.every((run) => {
      const [p, q] = run.start === from ? [a, b] : [b, a];
      return distance(run.from, p) > SAME_PLACE || distance(run.to, q) > SAME_PLACE;
    });
    return isBent ? [rectangleRing(rectangle(a, b, halfOf({ thickness: 0 })))] : [];
  });
}

type Piece = Pick<Run, 'line' | 'from' | 'to'>;

function wholeLine(line: CentreLine): Piece {
  return { line, from: line.a, to: line.b };
}

/** A body and the walls that it represents: its own, then those whose bodies it contains. */
interface Held {
  readonly walls: Wall[];
  body: Rectangle;
}

/** Returns the bodies of coinciding walls: the thickest first, then each that is not contained in one before. */
function sideBySide(pieces: readonly Piece[], more: Mm): readonly Readonly<Held>[] {
  if (pieces.length === 1) return pieces.map((piece) => ({ walls: [piece.line.wall], body: bodyOf(piece, more) }));
  const kept: Held[] = [];
  for (const piece of thickestFirst(pieces)) {
    const { wall } = piece.line;
    const body = bodyOf(piece, more);
    const ring = rectangleRing(body);
    const holder = kept.find((one) => rectangleHolds(one.body, ring));
    const [lead] = kept;
    if (holder) holder.walls.push(wall);
    else if (!lead || kept.length < MOST_SIDE_BY_SIDE) kept.push({ walls: [wall], body });
    else {
      lead.walls.push(wall);
      lead.body = extended(lead.body, ring);
    }
  }
  return kept;
}

function bodyOf({ line, from, to }: Piece, more: Mm): Rectangle {
  return rectangle(from, to, halfOf(line.wall) + more);
}

/** Returns the rectangle enlarged to contain the ring. */
function extended(body: Rectangle, ring: Ring): Rectangle {
  const { half, ends } = reachOf(body, ring);
  const [x, y] = [body.along[0] * ends, body.along[1] * ends];
  return rectangle([body.from[0] - x, body.from[1] - y], [body.to[0] + x, body.to[1] + y], Math.max(half, body.half));
}

function thickestFirst<P extends Piece>(pieces: readonly P[]): P[] {
  return [...pieces].sort(({ line: { wall: a } }, { line: { wall: b } }) => {
    return b.thickness - a.thickness || (a.id < b.id ? -1 : Number(a.id > b.id));
  });
}

/** An arm of a node, with the bodies on it. */
interface NodeArm extends Arm, Part {
  readonly wall: Wall;
  /** Its own wall, and those of the same direction and thickness. */
  readonly walls: Wall[];
  /** The body up to the next node, and that of the whole wall. */
  readonly stretch: Rectangle;
  readonly whole: Rectangle;
  /** Bodies of walls of the same direction and thickness that extend farther. */
  readonly beside: Rectangle[];
  /** The end of the wall that it leads to. */
  readonly far: XY;
}

function addJointsAt(joints: Joint[], graph: WallGraph, node: number, around: readonly number[], more: Mm): void {
  const at = graph.nodes[node] as XY;
  const arms: NodeArm[] = [];
  for (const h of around) addArms(arms, graph.edges[h >> 1] as GraphEdge, h >> 1, node, at, more);
  if (arms.length < 2) return;
  if (isCrowd(graph, node, around)) {
    joints.push(crowd(at, node, arms));
    return;
  }
  const first = joints.length;
  for (let i = 0; i < arms.length; i++) {
    const one = arms[i] as NodeArm;
    for (let k = i + 1; k < arms.length; k++) {
      const two = arms[k] as NodeArm;
      // Coinciding walls have no joint: one contains the other.
      if (one.edge === two.edge && runOnEachOther(one, two)) continue;
      const ring = ringOf(at, one, two);
      // Of coinciding walls the joint of the thickest comes first, and nearly always contains those of the others.
      if (
        !ring ||
        (arms.length > around.length && joints.slice(first).some((known) => holdsJoint(known, one, two, ring)))
      )
        continue;
      joints.push(jointOf(node, one, two, ring, arms));
    }
  }
}

/**
 * Returns whether the shorter of two walls on one edge coincides with the other over its whole length. Two walls that
 * diverge at a small angle also
 * share an edge when a third wall crosses both within the node tolerance of where they meet.
 */
function runOnEachOther(one: NodeArm, two: NodeArm): boolean {
  const [short, long] = one.whole.length < two.whole.length ? [one, two] : [two, one];
  return distance(short.far, footOn(long.whole, short.far)) <= TOUCH;
}

function holdsJoint({ parts, ring: outer }: Joint, one: Part, two: Part, ring: Ring): boolean {
  if (parts[0]?.edge !== one.edge || parts[1]?.edge !== two.edge) return false;
  const body = ringBody(outer);
  return ring.every(([x, y]) => bodyDistance(body, x, y) <= SAME_PLACE);
}

/**
 * Returns the joint of two walls where these two meet, even if a third wall moved their node within the node tolerance.
 */
function ringOf(node: XY, one: NodeArm, two: NodeArm): Ring | null {
  if (distance(one.at, node) <= SAME_POINT && distance(two.at, node) <= SAME_POINT) return jointRing(node, one, two);
  const at = meetingOf(one.whole, two.whole) ?? node;
  return jointRing(at, { ...one, at: footOn(one.whole, at) }, { ...two, at: footOn(two.whole, at) });
}

function footOn({ from, to }: Rectangle, p: XY): XY {
  return along(from, to, nearestParameter(p, from, to));
}

/** Returns whether more walls meet or nearly meet at a node than are joined in pairs. */
export function isCrowd({ nodes, edges, hasHubs }: WallGraph, node: number, around: readonly number[]): boolean {
  if (around.length > CROWD) return true;
  if (!hasHubs) return false;
  const at = nodes[node] as XY;
  return around.some((h) =>
    edges[h >> 1]?.runs.some(({ line: { hub } }) => hub !== undefined && distance(hub, at) <= TOUCH),
  );
}

/** Adds the walls of an edge, the thickest first; walls of the same direction and thickness become one arm. */
function addArms(arms: NodeArm[], { runs }: GraphEdge, edge: number, node: number, at: XY, more: Mm): void {
  const first = arms.length;
  for (const run of runs.length > 1 ? thickestFirst(runs) : runs) {
    // A piece that connects straight across a gap fills it and does not form a corner.
    if (!run.line.isInLine) continue;
    // A piece that leads to a hub has its joint there.
    if (run.line.hub && distance(run.line.hub, at) > TOUCH) continue;
    const arm = armOf(run, edge, node, more);
    const known = arms.length > first ? arms.find((other, i) => i >= first && runsAs(arm, other)) : undefined;
    if (known) {
      known.walls.push(arm.wall);
      addBeside(known, arm.whole);
    } else if (arms.length - first < MOST_SIDE_BY_SIDE) arms.push(arm);
  }
}

function addBeside({ whole, beside }: NodeArm, other: Rectangle): void {
  const ring = rectangleRing(other);
  if (beside.length < MOST_SIDE_BY_SIDE && ![whole, ...beside].some((one) => rectangleHolds(one, ring))) {
    beside.push(other);
  }
}

function runsAs({ along: [ux, uy], half }: Arm, other: Arm): boolean {
  const [vx, vy] = other.along;
  return half === other.half && Math.abs(ux * vy - uy * vx) < SAME_WAY && ux * vx + uy * vy > 0;
}

function armOf(run: Run, edge: number, node: number, more: Mm): NodeArm {
  const { wall } = run.line;
  const whole = rectangle(run.line.a, run.line.b, halfOf(wall) + more);
  const isWhole = run.from === run.line.a && run.to === run.line.b;
  const leaves = run.start === node;
  const [ux, uy] = whole.along;
  return {
    edge,
    wall,
    walls: [wall],
    at: leaves ? run.from : run.to,
    along: leaves ? [ux, uy] : [-ux, -uy],
    half: whole.half,
    stretch: isWhole ? whole : rectangle(run.from, run.to, whole.half),
    whole,
    beside: [],
    far: leaves ? whole.to : whole.from,
  };
}

function wallsOf(one: NodeArm, two: NodeArm): Wall[] {
  if (one.wall === two.wall) return [one.wall];
  return one.wall.id < two.wall.id ? [one.wall, two.wall] : [two.wall, one.wall];
}

const NONE: readonly Part[] = [];

function jointOf(node: number, one: NodeArm, two: NodeArm, ring: Ring, arms: readonly NodeArm[]): Joint {
  let heldBy: Part[] | null = null;
  let isHeld = false;
  for (const arm of arms) {
    const { stretch, whole } = arm;
    if (rectangleHolds(stretch, ring)) {
      heldBy ??= [];
      heldBy.push(arm);
    } else if (!isHeld) {
      isHeld =
        (whole !== stretch && rectangleHolds(whole, ring)) || arm.beside.some((other) => rectangleHolds(other, ring));
    }
  }
  const parts = [one, two];
  return { node, parts, walls: wallsOf(one, two), ring, isHeld: isHeld || heldBy !== null, heldBy: heldBy ?? NONE };
}

function crowd(at: XY, node: number, arms: readonly NodeArm[]): Joint {
  const wall = mainWall(arms.map((arm) => arm.wall));
  const half = Math.max(...arms.map((arm): Mm => arm.half));
  // Walls are connected to a hub from up to an inch and a half away, so the joint reaches that much farther.
  const ring = crowdedRing(at, half, 3 * SNAP);
  return { node, parts: arms, walls: [wall], ring, isHeld: false, heldBy: [] };
}
