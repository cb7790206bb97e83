import type { Mm, Wall, XY } from '../plan/model.ts';
import { along, distance, nearestParameter, segmentDistance } from '../plane/point.ts';
import { Nodes } from './nodes.ts';
import { NODE_TOLERANCE } from './tolerances.ts';
import type { CenterLine } from './types.ts';

/**
 * The part of one wall on an edge, on the wall's own line, which may be beside a merged node by up to the node
 * tolerance.
 */
export interface Run {
  readonly line: CenterLine;
  readonly from: XY;
  readonly to: XY;
  /** The node at its `from`. */
  readonly start: number;
}

/** A stretch of wall between two adjacent nodes. */
export interface GraphEdge {
  readonly from: number;
  readonly to: number;
  /** The walls on this edge; several where walls coincide. */
  readonly walls: readonly Wall[];
  /** The stretch on the line of each. */
  readonly runs: readonly Run[];
}

/** A planar graph: no edge crosses or overlaps another, and nodes are at least the node tolerance apart. */
export interface WallGraph {
  readonly nodes: readonly XY[];
  readonly edges: readonly GraphEdge[];
  /** The lines that were split, grouped by their end nodes. */
  readonly spans: readonly (readonly CenterLine[])[];
  /** Whether some of them lead to a hub (see `CenterLine.hub`). */
  readonly hasHubs: boolean;
}

/** Lines between the same two nodes: walls drawn repeatedly in one place are split only once. */
interface Bundle {
  readonly lead: CenterLine;
  readonly lines: CenterLine[];
  readonly from: number;
  readonly to: number;
  /** Nodes between its ends. */
  readonly stops: Set<number>;
}

/**
 * Returns the planar graph of center-lines: split wherever they meet, cross or coincide (noding), with points within
 * the node tolerance merged. The result does not depend on the order of the lines.
 */
export function wallGraph(lines: readonly CenterLine[]): WallGraph {
  const nodes = new Nodes();
  const bundles = bundled(lines, nodes);
  const crossings: [Bundle, Bundle, XY][] = [];
  forNearPairs(bundles, (s, t) => {
    const at = splitPair(s, t);
    if (at) crossings.push([s, t, at]);
  });
  // After the ends, so that a crossing at the end of a third wall becomes that end's node.
  for (const [s, t, at] of crossings) {
    const node = nodes.of(at);
    s.stops.add(node);
    t.stops.add(node);
  }
  const edges = new Map<string, Growing>();
  for (const bundle of bundles) addEdges(edges, bundle, nodes.points);
  const spans = bundles.map((bundle) => bundle.lines);
  const hasHubs = lines.some(({ hub }) => hub !== undefined);
  return { nodes: nodes.points, edges: [...edges.values()], spans, hasHubs };
}

function bundled(lines: readonly CenterLine[], nodes: Nodes): Bundle[] {
  const bundles = new Map<string, Bundle[]>();
  for (const line of lines) {
    const from = nodes.of(line.a);
    const to = nodes.of(line.b);
    const key = `${from} ${to}`;
    const existing = bundles.get(key) ?? [];
    const home = existing.find(
      ({ lead }) => distance(lead.a, line.a) <= NODE_TOLERANCE && distance(lead.b, line.b) <= NODE_TOLERANCE,
    );
    if (home) home.lines.push(line);
    else bundles.set(key, [...existing, { lead: line, lines: [line], from, to, stops: new Set() }]);
  }
  return [...bundles.values()].flat().sort((s, t) => s.lead.a[0] - t.lead.a[0]);
}

/**
 * Calls `visit` for every pair of lines whose bounding boxes come within the node tolerance. The lines are sorted by
 * left end.
 */
function forNearPairs(bundles: readonly Bundle[], visit: (s: Bundle, t: Bundle) => void): void {
  bundles.forEach((s, i) => {
    const { a, b } = s.lead;
    const right = b[0] + NODE_TOLERANCE;
    const low = Math.min(a[1], b[1]) - NODE_TOLERANCE;
    const high = Math.max(a[1], b[1]) + NODE_TOLERANCE;
    for (let k = i + 1; k < bundles.length; k++) {
      const t = bundles[k] as Bundle;
      if (t.lead.a[0] > right) break;
      if (Math.max(t.lead.a[1], t.lead.b[1]) < low || Math.min(t.lead.a[1], t.lead.b[1]) > high) continue;
      visit(s, t);
    }
  });
}

/** Splits the lines where an end touches the other line; returns a proper crossing, if any, instead of splitting. */
function splitPair(s: Bundle, t: Bundle): XY | null {
  // Walls that share a node meet there, and elsewhere only where they coincide.
  let touched = s.from === t.from || s.from === t.to || s.to === t.from || s.to === t.to;
  if (splitAt(t, s.lead.a, s.from)) touched = true;
  if (splitAt(t, s.lead.b, s.to)) touched = true;
  if (splitAt(s, t.lead.a, t.from)) touched = true;
  if (splitAt(s, t.lead.b, t.to)) touched = true;
  return touched ? null : crossing(s.lead.a, s.lead.b, t.lead.a, t.lead.b);
}

/** Splits lines at the end of another if that end touches them between their own ends; returns whether it does. */
function splitAt(bundle: Bundle, end: XY, node: number): boolean {
  if (node === bundle.from || node === bundle.to) return false;
  if (segmentDistance(end, bundle.lead.a, bundle.lead.b) > NODE_TOLERANCE) return false;
  bundle.stops.add(node);
  return true;
}

/**
 * Returns where two lines meet: an end of one that touches the other, else their crossing; null for neither. The result
 * does not depend on other lines.
 */
export function meetingPoint(one: { from: XY; to: XY }, two: { from: XY; to: XY }): XY | null {
  for (const end of [one.from, one.to]) if (segmentDistance(end, two.from, two.to) <= NODE_TOLERANCE) return end;
  for (const end of [two.from, two.to]) if (segmentDistance(end, one.from, one.to) <= NODE_TOLERANCE) return end;
  return crossing(one.from, one.to, two.from, two.to);
}

function crossing(a: XY, b: XY, c: XY, d: XY): XY | null {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const ex = d[0] - c[0];
  const ey = d[1] - c[1];
  const denominator = dx * ey - dy * ex;
  if (denominator === 0) return null;
  const u = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / denominator;
  const v = ((c[0] - a[0]) * dy - (c[1] - a[1]) * dx) / denominator;
  return u <= 0 || u >= 1 || v <= 0 || v >= 1 ? null : along(a, b, u);
}

type Growing = { readonly from: number; readonly to: number; readonly walls: Wall[]; readonly runs: Run[] };

function addEdges(edges: Map<string, Growing>, bundle: Bundle, nodes: readonly XY[]): void {
  const { lead, lines, stops } = bundle;
  const share = (node: number, { a, b }: CenterLine): Mm => nearestParameter(nodes[node] as XY, a, b);
  const between = [...stops]
    .filter((node) => node !== bundle.from && node !== bundle.to)
    .sort((p, q) => share(p, lead) - share(q, lead) || p - q);
  const way = [bundle.from, ...between, bundle.to];
  for (const line of lines) {
    let from = line.a;
    for (let k = 1; k < way.length; k++) {
      const to = k === way.length - 1 ? line.b : along(line.a, line.b, share(way[k] as number, line));
      addRun(edges, way[k] as number, { line, from, to, start: way[k - 1] as number });
      from = to;
    }
  }
}

function addRun(edges: Map<string, Growing>, q: number, run: Run): void {
  const p = run.start;
  if (p === q) return;
  const from = Math.min(p, q);
  const to = Math.max(p, q);
  const key = `${from} ${to}`;
  let edge = edges.get(key);
  if (!edge) {
    edge = { from, to, walls: [], runs: [] };
    edges.set(key, edge);
  }
  edge.runs.push(run);
  if (edge.walls[edge.walls.length - 1] !== run.line.wall && !edge.walls.includes(run.line.wall)) {
    edge.walls.push(run.line.wall);
  }
}

/** Returns the wall that represents coinciding walls: the thickest, then the least id. */
export function mainWall(walls: readonly Wall[]): Wall {
  return walls.reduce((best, wall) =>
    wall.thickness > best.thickness || (wall.thickness === best.thickness && wall.id < best.id) ? wall : best,
  );
}

/** An edge, and those of its walls that one body or one side of a joint represents. */
export interface EdgeWalls {
  readonly edge: number;
  readonly walls: readonly Wall[];
}

/** Returns pieces of walls in the order of thickness, the thickest first, then by id. */
export function thickestFirst<P extends Pick<Run, 'line'>>(pieces: readonly P[]): P[] {
  return [...pieces].sort(({ line: { wall: a } }, { line: { wall: b } }) => {
    return b.thickness - a.thickness || (a.id < b.id ? -1 : Number(a.id > b.id));
  });
}
