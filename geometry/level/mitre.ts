import { withoutRepeats } from '../body.ts';
import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../point.ts';
import { clockwiseOnScreen } from '../ring.ts';
import type { GraphEdge, WallGraph } from './graph.ts';
import type { Ring } from './types.ts';

/**
 * A mitred corner reaches at most this many half-thicknesses from its node. Beyond (walls folding back on each other below
 * about 11.5°, or a thick wall running on as a thin one) the walls are cut off square instead of growing a spike.
 */
const MITRE_LIMIT = 10;

/** Walls that turn by less, as the sine of the angle, run straight on: below, rounding decides where their faces meet. */
const STRAIGHT = 1e-9;

/** Where the face of a wall ends near a node, in the wall's own frame. */
interface Corner {
  /** Along the wall away from the node, mm; negative beyond the node. */
  readonly s: Mm;
  /** Half-way between two square-cut ends, where there is no mitre; else null. */
  readonly wedge: XY | null;
}

/**
 * The body of every edge: half the thickness on either side, cut along the mitre line at each end, so that bodies around a
 * node meet without gap, and without overlap as long as the walls are longer than their corners. A free end is cut square.
 * Result: one simple ring per edge, clockwise on screen.
 */
export function mitredBodies(
  graph: WallGraph,
  around: readonly (readonly number[])[],
  halfThickness: readonly Mm[],
): Ring[] {
  const count = graph.edges.length * 2;
  /** Per half-edge, at its start: the corner on its clockwise and on its counter-clockwise side. */
  const clockwise: Corner[] = new Array(count);
  const counter: Corner[] = new Array(count);
  around.forEach((half, node) => {
    half.forEach((h, i) => {
      const g = half[(i + 1) % half.length] as number;
      const [first, second] = sector(graph, node, h, g, halfThickness);
      clockwise[h] = first;
      counter[g] = second;
    });
  });
  return graph.edges.map((edge, k) => {
    const a = graph.nodes[edge.from] as XY;
    const b = graph.nodes[edge.to] as XY;
    const width = halfThickness[k] as Mm;
    const there = 2 * k;
    const back = 2 * k + 1;
    // The clockwise side of the way there is the counter-clockwise side of the way back.
    const right = side(a, b, width, clockwise[there] as Corner, counter[back] as Corner);
    const left = side(a, b, -width, counter[there] as Corner, clockwise[back] as Corner);
    return clockwiseOnScreen(withoutRepeats([a, ...right, b, ...left.reverse()]));
  });
}

/** Corners of two edges that are neighbours around a node, on the side of the sector from `h` clockwise to `g`. */
function sector(graph: WallGraph, node: number, h: number, g: number, halfThickness: readonly Mm[]): [Corner, Corner] {
  const square: Corner = { s: 0, wedge: null };
  if (h === g) return [square, square];
  const center = graph.nodes[node] as XY;
  const u = directionOf(graph, node, h);
  const v = directionOf(graph, node, g);
  const p = halfThickness[h >> 1] as Mm;
  const q = halfThickness[g >> 1] as Mm;
  const sin = u[0] * v[1] - u[1] * v[0];
  const cos = u[0] * v[0] + u[1] * v[1];
  const halfTurn = (Math.atan2(sin, cos) + (sin < 0 ? 2 * Math.PI : 0)) / 2;
  // Not (1 + cos) / sin, which is rounding over rounding where a wall runs straight on: it cut notches up to the centre-line.
  const cot = Math.cos(halfTurn) / Math.sin(halfTurn);
  const step = p === q ? 0 : (q - p) / sin;
  // Both faces meet at offset p from one line and q from the other.
  const s = step + p * cot;
  const t = q * cot - step;
  const isNear = Math.abs(sin) > STRAIGHT && Math.hypot(s, p) <= MITRE_LIMIT * Math.max(p, q);
  // Nearly straight on as a thinner or thicker wall: on the narrow side both end square, with a step between them, on the
  // wide side they run on to the line that halves it.
  if (!isNear && cos < 0) return mitre(Math.min(0, p * cot), Math.min(0, q * cot));
  if (sin > 0 && (s > lengthOf(graph, h) || t > lengthOf(graph, g))) return pastAnEnd(cos / sin, p, q);
  // On the wide side of a corner the faces may meet short of the node, where the thicker wall still stands: no wall is less
  // than its thickness because a thinner one begins.
  if (isNear && sin < 0) return mitre(Math.min(0, s), Math.min(0, t));
  // The faces meet; where sin is positive perhaps far out, at the end of a narrow wedge of room between two walls.
  if (isNear || sin > 0) return mitre(s, t);
  if (p === 0 && q === 0) return [square, square];
  const wedge: XY = [center[0] + (-u[1] * p + v[1] * q) / 2, center[1] + (u[0] * p - v[0] * q) / 2];
  return [
    { s: 0, wedge },
    { s: 0, wedge },
  ];
}

function mitre(s: Mm, t: Mm): [Corner, Corner] {
  return [
    { s, wedge: null },
    { s: t, wedge: null },
  ];
}

/**
 * The faces would meet beyond the end of one of the walls: a stub shorter than its neighbour is thick, say. What is left of
 * the mitre would be a notch in the longer wall, so each runs on, under the other, up to the other's centre-line.
 */
function pastAnEnd(cot: number, p: Mm, q: Mm): [Corner, Corner] {
  return mitre(Math.max(0, p * cot), Math.max(0, q * cot));
}

/** The points of one side of an edge from a to b; `offset` positive on the clockwise side. */
function side(a: XY, b: XY, offset: Mm, start: Corner, end: Corner): XY[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const u: XY = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const at = (x: Mm, y: Mm): XY => [a[0] + u[0] * x - u[1] * y, a[1] + u[1] * x + u[0] * y];
  const from = start.s;
  const to = length - end.s;
  if (from <= to) {
    return [...(start.wedge ? [start.wedge] : []), at(from, offset), at(to, offset), ...(end.wedge ? [end.wedge] : [])];
  }
  // The corners have passed each other: the face is swallowed by its neighbours, a triangle remains.
  const share = Number.isFinite(from - to) ? length / (from - to + length) : 0;
  return [at(Number.isFinite(from) ? from * share : length / 2, offset * share)];
}

function lengthOf(graph: WallGraph, h: number): Mm {
  const { from, to } = graph.edges[h >> 1] as GraphEdge;
  return distance(graph.nodes[from] as XY, graph.nodes[to] as XY);
}

function directionOf(graph: WallGraph, node: number, h: number): XY {
  const { from, to } = graph.edges[h >> 1] as GraphEdge;
  const a = graph.nodes[node] as XY;
  const b = graph.nodes[h & 1 ? from : to] as XY;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
