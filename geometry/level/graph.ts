import type { Mm, Wall, XY } from '../plan/model.ts';
import { along, comparePoints, distance, nearestOnSegment } from '../point.ts';
import { type CentreLine, TOUCH } from './centre-lines.ts';

/** A stretch of wall between two neighbouring nodes. */
export interface GraphEdge {
  readonly from: number;
  readonly to: number;
  /** The walls that run here; more than one where walls overlap. */
  readonly walls: readonly Wall[];
}

/** Nodes and edges: no edge crosses or overlaps another, nodes are at least a touch apart. */
export interface WallGraph {
  readonly nodes: readonly XY[];
  readonly edges: readonly GraphEdge[];
}

/**
 * Splits centre-lines wherever they meet, cross or run on one another. Points within a touch of each other become one
 * node. The result does not depend on the order of the lines.
 */
export function wallGraph(lines: readonly CentreLine[]): WallGraph {
  const splits = lines.map(({ a, b }): XY[] => [a, b]);
  forNearPairs(lines, (i, j) => splitPair(lines, splits, i, j));
  const { nodes, indexOf } = mergedNodes(splits.flat());
  const edges = new Map<string, { from: number; to: number; walls: Wall[] }>();
  lines.forEach((line, i) => {
    const { a, b } = line;
    const length = distance(a, b);
    const at = (p: XY) => ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    const stops = (splits[i] as XY[])
      .slice()
      .sort((p, q) => at(p) - at(q))
      .map(indexOf);
    for (let k = 1; k < stops.length; k++) addEdge(edges, stops[k - 1] as number, stops[k] as number, line.wall);
  });
  return { nodes, edges: [...edges.values()] };
}

function addEdge(
  edges: Map<string, { from: number; to: number; walls: Wall[] }>,
  p: number,
  q: number,
  wall: Wall,
): void {
  if (p === q) return;
  const from = Math.min(p, q);
  const to = Math.max(p, q);
  const key = `${from} ${to}`;
  const edge = edges.get(key);
  if (!edge) edges.set(key, { from, to, walls: [wall] });
  else if (!edge.walls.includes(wall)) edge.walls.push(wall);
}

/** Calls back for every pair of lines whose extents come within a touch of each other. Sweep along x. */
function forNearPairs(lines: readonly CentreLine[], visit: (i: number, j: number) => void): void {
  const order = lines.map((_, i) => i).sort((i, j) => minX(lines, i) - minX(lines, j));
  for (let m = 0; m < order.length; m++) {
    const i = order[m] as number;
    const { a, b } = lines[i] as CentreLine;
    const right = Math.max(a[0], b[0]) + TOUCH;
    const low = Math.min(a[1], b[1]) - TOUCH;
    const high = Math.max(a[1], b[1]) + TOUCH;
    for (let n = m + 1; n < order.length; n++) {
      const j = order[n] as number;
      if (minX(lines, j) > right) break;
      const other = lines[j] as CentreLine;
      if (Math.max(other.a[1], other.b[1]) < low || Math.min(other.a[1], other.b[1]) > high) continue;
      visit(Math.min(i, j), Math.max(i, j));
    }
  }
}

function minX(lines: readonly CentreLine[], i: number): Mm {
  const { a, b } = lines[i] as CentreLine;
  return Math.min(a[0], b[0]);
}

/** Ends that touch the other line split it there; otherwise a clean crossing splits both. */
function splitPair(lines: readonly CentreLine[], splits: XY[][], i: number, j: number): void {
  const s = lines[i] as CentreLine;
  const t = lines[j] as CentreLine;
  let touched = false;
  for (const [end, other, into] of [
    [s.a, t, j],
    [s.b, t, j],
    [t.a, s, i],
    [t.b, s, i],
  ] as const) {
    if (distance(end, nearestOnSegment(end, other.a, other.b)) > TOUCH) continue;
    (splits[into] as XY[]).push(end);
    touched = true;
  }
  if (touched) return;
  const dx = s.b[0] - s.a[0];
  const dy = s.b[1] - s.a[1];
  const ex = t.b[0] - t.a[0];
  const ey = t.b[1] - t.a[1];
  const denominator = dx * ey - dy * ex;
  if (denominator === 0) return;
  const u = ((t.a[0] - s.a[0]) * ey - (t.a[1] - s.a[1]) * ex) / denominator;
  const v = ((t.a[0] - s.a[0]) * dy - (t.a[1] - s.a[1]) * dx) / denominator;
  if (u <= 0 || u >= 1 || v <= 0 || v >= 1) return;
  const crossing = along(s.a, s.b, u);
  (splits[i] as XY[]).push(crossing);
  (splits[j] as XY[]).push(crossing);
}

/** One node for all points within a touch of each other (chained); the first in reading order stands for them. */
function mergedNodes(points: readonly XY[]): { nodes: XY[]; indexOf: (p: XY) => number } {
  const sorted = [...points].sort(comparePoints);
  const nodes: XY[] = [];
  const index = new Map<XY, number>();
  const open: { at: XY; node: number }[] = [];
  for (const p of sorted) {
    while (open.length > 0 && (open[0] as { at: XY }).at[0] < p[0] - TOUCH) open.shift();
    const near = open.find(({ at }) => distance(at, p) <= TOUCH);
    const node = near ? near.node : nodes.push(p) - 1;
    open.push({ at: p, node });
    index.set(p, node);
  }
  return { nodes, indexOf: (p) => index.get(p) as number };
}

/** Of walls that run on one another the thickest counts; of equals the first id. */
export function mainWall(walls: readonly Wall[]): Wall {
  return walls.reduce((best, wall) =>
    wall.thickness > best.thickness || (wall.thickness === best.thickness && wall.id < best.id) ? wall : best,
  );
}
