import type { Mm, Wall, XY } from '../plan/model.ts';
import type { Faces } from './faces.ts';
import { type GraphEdge, mainWall, type Run, type WallGraph } from './graph.ts';
import { type Arm, crowdedRing, jointRing } from './joints.ts';
import { halfOf, type Rectangle, reachOf, rectangle, rectangleHolds, rectangleRing } from './rectangles.ts';
import type { CentreLine } from './touch.ts';
import type { Ring } from './types.ts';

/** So many walls in one place keep a body each; of more, one that holds them all. */
const MOST_SIDE_BY_SIDE = 8;

/** Where more walls than this meet, one ring stands for the joints of every two of them. */
export const CROWD = 48;

/** The body of one wall on one edge. */
export interface Stretch {
  readonly edge: number;
  readonly wall: Wall;
  readonly ring: Ring;
}

/** What joins two walls, or a crowd of them, at a node. */
export interface Joint {
  readonly node: number;
  /** The edges that it joins. */
  readonly edges: readonly number[];
  readonly walls: readonly Wall[];
  readonly ring: Ring;
  /** Whether some wall at the node holds all of it: it adds nothing to what stands there. */
  readonly isHeld: boolean;
  /** The edges whose own stretch holds all of it. */
  readonly heldBy: readonly number[];
}

/** Everything that stands: a full rectangle for every wall, square ends, whatever meets it; and a joint for every two that meet. */
export interface Bodies {
  /** Edge by edge. */
  readonly stretches: readonly Stretch[];
  readonly joints: readonly Joint[];
  /** The same as whole walls and joints, for cutting. */
  readonly standing: readonly Ring[];
}

export function wallBodies(graph: WallGraph, { around }: Pick<Faces, 'around'>): Bodies {
  const stretches = graph.edges.flatMap(({ runs }, edge) =>
    sideBySide(runs).map(({ wall, body }): Stretch => ({ edge, wall, ring: rectangleRing(body) })),
  );
  const joints = around.flatMap((half, node) => jointsAt(graph, node, half));
  const walls = graph.spans.flatMap((lines) => sideBySide(lines.map(wholeLine)).map(({ body }) => rectangleRing(body)));
  const standing = [...walls, ...joints.filter(({ isHeld }) => !isHeld).map(({ ring }) => ring)];
  return { stretches, joints, standing };
}

type Piece = Pick<Run, 'line' | 'from' | 'to'>;

function wholeLine(line: CentreLine): Piece {
  return { line, from: line.a, to: line.b };
}

/** The bodies of walls that run on one another: the thickest first, and whatever stands out from those before. */
function sideBySide(pieces: readonly Piece[]): { wall: Wall; body: Rectangle }[] {
  if (pieces.length === 1) return pieces.map((piece) => ({ wall: piece.line.wall, body: bodyOf(piece) }));
  const kept: { wall: Wall; body: Rectangle }[] = [];
  for (const piece of thickestFirst(pieces)) {
    const body = bodyOf(piece);
    const ring = rectangleRing(body);
    if (kept.some((one) => rectangleHolds(one.body, ring))) continue;
    const [lead] = kept;
    if (!lead || kept.length < MOST_SIDE_BY_SIDE) kept.push({ wall: piece.line.wall, body });
    else kept[0] = { wall: lead.wall, body: extended(lead.body, ring) };
  }
  return kept;
}

function bodyOf({ line, from, to }: Piece): Rectangle {
  return rectangle(from, to, halfOf(line.wall));
}

/** The rectangle made as large as it must be to hold the ring as well. */
function extended(body: Rectangle, ring: Ring): Rectangle {
  const { half, ends } = reachOf(body, ring);
  const [x, y] = [body.along[0] * ends, body.along[1] * ends];
  return rectangle([body.from[0] - x, body.from[1] - y], [body.to[0] + x, body.to[1] + y], Math.max(half, body.half));
}

function thickestFirst(pieces: readonly Piece[]): Piece[] {
  return [...pieces].sort(({ line: { wall: a } }, { line: { wall: b } }) => {
    return b.thickness - a.thickness || (a.id < b.id ? -1 : Number(a.id > b.id));
  });
}

/** An arm of a node with what stands on it. */
interface NodeArm extends Arm {
  readonly edge: number;
  readonly wall: Wall;
  /** The stretch up to the next node, and the whole wall. */
  readonly stretch: Rectangle;
  readonly whole: Rectangle;
}

function jointsAt(graph: WallGraph, node: number, around: readonly number[]): Joint[] {
  if (around.length < 2) return [];
  const arms = around.map((h) => armOf(graph.edges[h >> 1] as GraphEdge, h >> 1, node));
  const at = graph.nodes[node] as XY;
  if (arms.length > CROWD) return [crowd(at, node, arms)];
  const joints: Joint[] = [];
  arms.forEach((one, i) => {
    for (const two of arms.slice(i + 1)) {
      const ring = jointRing(at, one, two);
      if (ring)
        joints.push({ node, edges: [one.edge, two.edge], walls: wallsOf(one, two), ring, ...holders(arms, ring) });
    }
  });
  return joints;
}

function armOf(edge: GraphEdge, k: number, node: number): NodeArm {
  const wall = mainWall(edge.walls);
  const run = edge.runs.find(({ line }) => line.wall === wall) as Run;
  const whole = rectangle(run.line.a, run.line.b, halfOf(wall));
  const leaves = run.start === node;
  const [ux, uy] = whole.along;
  return {
    edge: k,
    wall,
    at: leaves ? run.from : run.to,
    along: leaves ? [ux, uy] : [-ux, -uy],
    half: whole.half,
    stretch: rectangle(run.from, run.to, whole.half),
    whole,
  };
}

function wallsOf(one: NodeArm, two: NodeArm): Wall[] {
  if (one.wall === two.wall) return [one.wall];
  return one.wall.id < two.wall.id ? [one.wall, two.wall] : [two.wall, one.wall];
}

function holders(arms: readonly NodeArm[], ring: Ring): Pick<Joint, 'isHeld' | 'heldBy'> {
  const heldBy = arms.filter(({ stretch }) => rectangleHolds(stretch, ring)).map(({ edge }) => edge);
  return { heldBy, isHeld: heldBy.length > 0 || arms.some(({ whole }) => rectangleHolds(whole, ring)) };
}

function crowd(at: XY, node: number, arms: readonly NodeArm[]): Joint {
  const wall = mainWall(arms.map((arm) => arm.wall));
  const half = Math.max(...arms.map((arm): Mm => arm.half));
  const ring = crowdedRing(at, half);
  return { node, edges: arms.map(({ edge }) => edge), walls: [wall], ring, isHeld: false, heldBy: [] };
}
