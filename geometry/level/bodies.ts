import type { Mm, Wall, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';
import type { Faces } from './faces.ts';
import { type EdgeWalls, type Run, thickestFirst, type WallGraph } from './graph.ts';
import { addJointsAt, type Joint } from './node-joints.ts';
import {
  halfThickness,
  type Rectangle,
  rectangle,
  rectangleContains,
  rectangleRing,
  requiredGrowth,
} from './rectangles.ts';
import { MOST_COINCIDING, ON_WALL } from './tolerances.ts';
import type { CenterLine } from './types.ts';

/** The body of one wall on one edge; it also represents the walls whose bodies it contains. */
export interface EdgeBody extends EdgeWalls {
  readonly wall: Wall;
  readonly ring: Ring;
}

/** Everything solid: a full rectangle with square ends for every wall, and a joint for every two walls that meet. */
export interface Bodies {
  /** Per edge. */
  readonly edgeBodies: readonly EdgeBody[];
  readonly joints: readonly Joint[];
  /** Whole walls and joints, for the computation of the floors. */
  readonly solids: readonly Ring[];
}

/**
 * Returns the bodies of all walls.
 *
 * @param extra how much thicker every wall is on either side than drawn, mm
 */
export function wallBodies(graph: WallGraph, { around }: Pick<Faces, 'around'>, extra: Mm = 0): Bodies {
  const edgeBodies: EdgeBody[] = [];
  graph.edges.forEach(({ runs }, edge) => {
    for (const { walls, body } of mergedBodies(runs, extra)) {
      edgeBodies.push({ edge, wall: walls[0] as Wall, walls, ring: rectangleRing(body) });
    }
  });
  const joints: Joint[] = [];
  around.forEach((half, node) => {
    addJointsAt(joints, graph, node, half, extra);
  });
  const solids: Ring[] = [];
  for (const lines of graph.spans) {
    for (const { body } of mergedBodies(lines.map(wholeLine), extra)) solids.push(rectangleRing(body));
  }
  solids.push(...bentEdges(graph));
  for (const { isContained, ring } of joints) if (!isContained) solids.push(ring);
  return { edgeBodies, joints, solids };
}

/**
 * A face runs from node to node, and a node may be beside its wall by up to the node tolerance, farther than a wall
 * without thickness reaches. Returns a minimal body for such edges, so that every face is bounded by solids.
 */
function bentEdges({ nodes, edges }: WallGraph): Ring[] {
  return edges.flatMap(({ from, to, runs }) => {
    const [a, b] = [nodes[from] as XY, nodes[to] as XY];
    const isBent = runs.every((run) => {
      const [p, q] = run.start === from ? [a, b] : [b, a];
      return distance(run.from, p) > ON_WALL || distance(run.to, q) > ON_WALL;
    });
    return isBent ? [rectangleRing(rectangle(a, b, halfThickness({ thickness: 0 })))] : [];
  });
}

type Piece = Pick<Run, 'line' | 'from' | 'to'>;

function wholeLine(line: CenterLine): Piece {
  return { line, from: line.a, to: line.b };
}

/** A body and the walls that it represents: its own wall, then those whose bodies it contains. */
interface MergedBody {
  readonly walls: Wall[];
  body: Rectangle;
}

/** Returns the bodies of coinciding walls: the thickest first, then each that no earlier body contains. */
function mergedBodies(pieces: readonly Piece[], extra: Mm): readonly Readonly<MergedBody>[] {
  if (pieces.length === 1) return pieces.map((piece) => ({ walls: [piece.line.wall], body: bodyOf(piece, extra) }));
  const merged: MergedBody[] = [];
  for (const piece of thickestFirst(pieces)) {
    const { wall } = piece.line;
    const body = bodyOf(piece, extra);
    const ring = rectangleRing(body);
    const container = merged.find((one) => rectangleContains(one.body, ring));
    const [lead] = merged;
    if (container) container.walls.push(wall);
    else if (!lead || merged.length < MOST_COINCIDING) merged.push({ walls: [wall], body });
    else {
      lead.walls.push(wall);
      lead.body = extended(lead.body, ring);
    }
  }
  return merged;
}

function bodyOf({ line, from, to }: Piece, extra: Mm): Rectangle {
  return rectangle(from, to, halfThickness(line.wall) + extra);
}

/** Returns the rectangle enlarged to contain the ring. */
function extended(body: Rectangle, ring: Ring): Rectangle {
  const { half, ends } = requiredGrowth(body, ring);
  const [x, y] = [body.along[0] * ends, body.along[1] * ends];
  return rectangle([body.from[0] - x, body.from[1] - y], [body.to[0] + x, body.to[1] + y], Math.max(half, body.half));
}
