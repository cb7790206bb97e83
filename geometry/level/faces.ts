import type { XY } from '../plan/model.ts';
import { ringContains, signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import type { WallGraph } from './graph.ts';

/** The unbounded face. */
export const OUTDOORS = -1;

/** A face with a smaller area cannot contain anything, mm². */
const SMALLEST_FACE = 1;

/** A bounded face: its outer boundary, then the outer boundaries of the components inside it (holes). */
export interface Face {
  readonly rings: readonly Ring[];
}

/**
 * The faces of a planar wall graph as a half-edge structure. Half-edge 2k runs along edge k from `from` to `to`, its
 * twin 2k + 1 the other way (the twin of h is h ^ 1); each has its face to the right, clockwise on screen.
 */
export interface Faces {
  readonly faces: readonly Face[];
  /** Index into `faces`, or OUTDOORS, per half-edge. */
  readonly faceOf: Int32Array;
  /** Half-edges leaving each node, clockwise on screen. */
  readonly around: readonly (readonly number[])[];
}

/**
 * Returns the faces of the graph. The outer boundary of each connected component is a hole of the smallest face around
 * it.
 */
export function traceFaces({ nodes, edges }: WallGraph): Faces {
  const startOf = (h: number) => (h & 1 ? edges[h >> 1]?.to : edges[h >> 1]?.from) as number;
  const leaving = outgoing(nodes, edges.length * 2, startOf);
  const next = nextHalfEdges(leaving, edges.length * 2);

  const cycleOf = new Int32Array(edges.length * 2).fill(-1);
  const cycles: { ring: XY[]; area: number; start: number }[] = [];
  for (let h = 0; h < cycleOf.length; h++) {
    if (cycleOf[h] !== -1) continue;
    const ring: XY[] = [];
    for (let g = h; cycleOf[g] === -1; g = next[g] as number) {
      cycleOf[g] = cycles.length;
      ring.push(nodes[startOf(g)] as XY);
    }
    cycles.push({ ring, area: signedArea(ring), start: h });
  }

  const component = components(nodes.length, edges);
  const homeOf = ({ start }: { start: number }) => component[startOf(start)] as number;
  // The cycle around a component is the one with the least signed area: negative, or 0 for a tree.
  const around = new Map<number, number>();
  cycles.forEach((cycle, i) => {
    const existing = around.get(homeOf(cycle));
    if (existing === undefined || cycle.area < (cycles[existing]?.area ?? 0)) around.set(homeOf(cycle), i);
  });
  const isOuter = new Set(around.values());
  const bounded = cycles.map((_, i) => i).filter((i) => !isOuter.has(i));
  const faces = bounded.map((i) => ({ rings: [cycles[i]?.ring as Ring] }));
  const faceOfCycle = new Int32Array(cycles.length).fill(OUTDOORS);
  bounded.forEach((cycle, face) => {
    faceOfCycle[cycle] = face;
  });
  for (const i of isOuter) {
    const cycle = cycles[i] as (typeof cycles)[number];
    const inside = cycle.ring[0] as XY;
    let holder = OUTDOORS;
    let least = Number.POSITIVE_INFINITY;
    bounded.forEach((b, face) => {
      const candidate = cycles[b] as (typeof cycles)[number];
      if (candidate.area <= SMALLEST_FACE || candidate.area >= least || homeOf(candidate) === homeOf(cycle)) return;
      if (!ringContains(candidate.ring, inside)) return;
      least = candidate.area;
      holder = face;
    });
    faceOfCycle[i] = holder;
    if (holder !== OUTDOORS) (faces[holder] as { rings: Ring[] }).rings.push(cycle.ring);
  }
  return { faces, faceOf: cycleOf.map((cycle) => faceOfCycle[cycle] as number), around: leaving };
}

function outgoing(nodes: readonly XY[], count: number, startOf: (h: number) => number): number[][] {
  const around: number[][] = nodes.map(() => []);
  for (let h = 0; h < count; h++) (around[startOf(h)] as number[]).push(h);
  const angle = new Float64Array(count);
  for (let h = 0; h < count; h++) {
    const from = nodes[startOf(h)] as XY;
    const to = nodes[startOf(h ^ 1)] as XY;
    angle[h] = Math.atan2(to[1] - from[1], to[0] - from[0]);
  }
  // y is down, so ascending angles run clockwise on screen.
  for (const half of around) half.sort((g, h) => (angle[g] as number) - (angle[h] as number) || g - h);
  return around;
}

/**
 * Returns the successor of each half-edge, with the face on the right: the next edge counter-clockwise on screen from
 * the twin at the far node.
 */
function nextHalfEdges(around: readonly (readonly number[])[], count: number): Int32Array {
  const next = new Int32Array(count);
  for (const half of around) {
    half.forEach((h, i) => {
      next[h ^ 1] = half[(i + half.length - 1) % half.length] as number;
    });
  }
  return next;
}

function components(count: number, edges: WallGraph['edges']): Int32Array {
  const parent = Int32Array.from({ length: count }, (_, i) => i);
  const find = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root] as number;
    parent[i] = root;
    return root;
  };
  for (const { from, to } of edges) parent[find(from)] = find(to);
  return parent.map((_, i) => find(i));
}
