import type { Mm, Wall, XY } from '../plan/model.ts';
import { bodyDistance, ringBody } from '../plane/body.ts';
import { along, distance, nearestParameter } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';
import {
  type EdgeWalls,
  type GraphEdge,
  mainWall,
  meetingPoint,
  type Run,
  thickestFirst,
  type WallGraph,
} from './graph.ts';
import { type Arm, highDegreeRing, jointRing } from './joints.ts';
import { halfThickness, type Rectangle, rectangle, rectangleContains, rectangleRing } from './rectangles.ts';
import { HIGH_DEGREE, MOST_COINCIDING, NODE_TOLERANCE, ON_WALL, SNAP_DISTANCE } from './tolerances.ts';

/** Points closer than this are the same point, mm. */
const SAME_POINT: Mm = 1e-9;

/** Walls whose directions differ by less are parallel, radians. */
const PARALLEL_ANGLE = 1e-5;

/** The joint of two walls at a node, or of all walls at a node of very high degree. */
export interface Joint {
  readonly node: number;
  /** The parts that it joins. */
  readonly parts: readonly EdgeWalls[];
  readonly walls: readonly Wall[];
  readonly ring: Ring;
  /** Whether a wall at the node contains all of it, so that it adds nothing to the solid area. */
  readonly isContained: boolean;
  /** The parts whose body on the edge contains all of it. */
  readonly containedBy: readonly EdgeWalls[];
}

/** An arm of a node, with the bodies on it. */
interface NodeArm extends Arm, EdgeWalls {
  readonly wall: Wall;
  /** Its own wall, and those of the same direction and thickness. */
  readonly walls: Wall[];
  /** The body up to the next node, and that of the whole wall. */
  readonly edgeBody: Rectangle;
  readonly whole: Rectangle;
  /** Bodies of walls of the same direction and thickness that extend farther. */
  readonly beside: Rectangle[];
  /** The end of the wall that it leads to. */
  readonly far: XY;
}

/** Adds the joints of a node to `joints`. `around` holds the half-edges that leave it; `extra` is added to each half-thickness, mm. */
export function addJointsAt(
  joints: Joint[],
  graph: WallGraph,
  node: number,
  around: readonly number[],
  extra: Mm,
): void {
  const at = graph.nodes[node] as XY;
  const arms: NodeArm[] = [];
  for (const h of around) addArms(arms, graph.edges[h >> 1] as GraphEdge, h >> 1, node, at, extra);
  if (arms.length < 2) return;
  if (isHighDegree(graph, node, around)) {
    joints.push(highDegreeJoint(at, node, arms));
    return;
  }
  const first = joints.length;
  for (let i = 0; i < arms.length; i++) {
    const one = arms[i] as NodeArm;
    for (let k = i + 1; k < arms.length; k++) {
      const two = arms[k] as NodeArm;
      // Coinciding walls have no joint: one contains the other.
      if (one.edge === two.edge && coincide(one, two)) continue;
      const ring = ringOf(at, one, two);
      // Of coinciding walls the joint of the thickest comes first, and nearly always contains those of the others.
      if (
        !ring ||
        (arms.length > around.length && joints.slice(first).some((existing) => containsJoint(existing, one, two, ring)))
      )
        continue;
      joints.push(jointOf(node, one, two, ring, arms));
    }
  }
}

/**
 * Returns whether the shorter of two walls that leave a node on one edge coincides with the other over its whole length,
 * whatever the two do on the other side of the node. Two walls that diverge at a small angle also share an edge when a
 * third wall crosses both within the node tolerance of the point where they meet.
 */
function coincide(one: NodeArm, two: NodeArm): boolean {
  const [short, long] = distance(one.at, one.far) < distance(two.at, two.far) ? [one, two] : [two, one];
  return distance(short.far, footOn(long.whole, short.far)) <= NODE_TOLERANCE;
}

function containsJoint({ parts, ring: outer }: Joint, one: EdgeWalls, two: EdgeWalls, ring: Ring): boolean {
  if (parts[0]?.edge !== one.edge || parts[1]?.edge !== two.edge) return false;
  const body = ringBody(outer);
  return ring.every(([x, y]) => bodyDistance(body, x, y) <= ON_WALL);
}

/** Returns the joint of two walls at the point where these two meet, even if a third wall moved their node within the node tolerance. */
function ringOf(node: XY, one: NodeArm, two: NodeArm): Ring | null {
  if (distance(one.at, node) <= SAME_POINT && distance(two.at, node) <= SAME_POINT) return jointRing(node, one, two);
  const at = meetingPoint(one.whole, two.whole) ?? node;
  return jointRing(at, { ...one, at: footOn(one.whole, at) }, { ...two, at: footOn(two.whole, at) });
}

function footOn({ from, to }: Rectangle, p: XY): XY {
  return along(from, to, nearestParameter(p, from, to));
}

/** Returns whether more walls meet or nearly meet at a node than are joined in pairs. */
export function isHighDegree({ nodes, edges, hasHubs }: WallGraph, node: number, around: readonly number[]): boolean {
  if (around.length > HIGH_DEGREE) return true;
  if (!hasHubs) return false;
  const at = nodes[node] as XY;
  return around.some((h) =>
    edges[h >> 1]?.runs.some(({ line: { hub } }) => hub !== undefined && distance(hub, at) <= NODE_TOLERANCE),
  );
}

/** Adds the walls of an edge, the thickest first; walls of the same direction and thickness become one arm. */
function addArms(arms: NodeArm[], { runs }: GraphEdge, edge: number, node: number, at: XY, extra: Mm): void {
  const first = arms.length;
  for (const run of runs.length > 1 ? thickestFirst(runs) : runs) {
    // A piece that connects straight across a gap fills it and does not form a corner.
    if (!run.line.isInLine) continue;
    // A piece that leads to a hub has its joint there.
    if (run.line.hub && distance(run.line.hub, at) > NODE_TOLERANCE) continue;
    const arm = armOf(run, edge, node, extra);
    const existing = arms.length > first ? arms.find((other, i) => i >= first && sameDirection(arm, other)) : undefined;
    if (existing) {
      existing.walls.push(arm.wall);
      addBeside(existing, arm.whole);
    } else if (arms.length - first < MOST_COINCIDING) arms.push(arm);
  }
}

function addBeside({ whole, beside }: NodeArm, other: Rectangle): void {
  const ring = rectangleRing(other);
  if (beside.length < MOST_COINCIDING && ![whole, ...beside].some((one) => rectangleContains(one, ring))) {
    beside.push(other);
  }
}

function sameDirection({ along: [ux, uy], half }: Arm, other: Arm): boolean {
  const [vx, vy] = other.along;
  return half === other.half && Math.abs(ux * vy - uy * vx) < PARALLEL_ANGLE && ux * vx + uy * vy > 0;
}

function armOf(run: Run, edge: number, node: number, extra: Mm): NodeArm {
  const { wall } = run.line;
  const whole = rectangle(run.line.a, run.line.b, halfThickness(wall) + extra);
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
    edgeBody: isWhole ? whole : rectangle(run.from, run.to, whole.half),
    whole,
    beside: [],
    far: leaves ? whole.to : whole.from,
  };
}

function wallsOf(one: NodeArm, two: NodeArm): Wall[] {
  if (one.wall === two.wall) return [one.wall];
  return one.wall.id < two.wall.id ? [one.wall, two.wall] : [two.wall, one.wall];
}

const NONE: readonly EdgeWalls[] = [];

function jointOf(node: number, one: NodeArm, two: NodeArm, ring: Ring, arms: readonly NodeArm[]): Joint {
  let containedBy: EdgeWalls[] | null = null;
  let isContained = false;
  for (const arm of arms) {
    const { edgeBody, whole } = arm;
    if (rectangleContains(edgeBody, ring)) {
      containedBy ??= [];
      containedBy.push(arm);
    } else if (!isContained) {
      isContained =
        (whole !== edgeBody && rectangleContains(whole, ring)) ||
        arm.beside.some((other) => rectangleContains(other, ring));
    }
  }
  const parts = [one, two];
  return {
    node,
    parts,
    walls: wallsOf(one, two),
    ring,
    isContained: isContained || containedBy !== null,
    containedBy: containedBy ?? NONE,
  };
}

function highDegreeJoint(at: XY, node: number, arms: readonly NodeArm[]): Joint {
  const wall = mainWall(arms.map((arm) => arm.wall));
  const half = Math.max(...arms.map((arm): Mm => arm.half));
  // Walls up to an inch and a half away are connected to a hub, so the joint reaches that much farther.
  const ring = highDegreeRing(at, half, 3 * SNAP_DISTANCE);
  return { node, parts: arms, walls: [wall], ring, isContained: false, containedBy: [] };
}
