import type { Mm, XY } from '../plan/model.ts';
import { distance, vectorLength } from '../plane/point.ts';
import type { Faces } from './faces.ts';
import type { GraphEdge, WallGraph } from './graph.ts';
import { HIGH_DEGREE } from './tolerances.ts';
import type { CenterLine } from './types.ts';

/** Walls at a smaller angle, as its sine, leave a sliver between them where they pass a node. */
const SMALL_SINE = 0.02;

/**
 * Where two walls pass one node at a very small angle, the area between them before and after the node is one space,
 * pinched where their lines come within the node tolerance: a third wall crossing there must not divide it.
 */
export interface Slivers {
  /** Pairs of faces that are one space except for the pinch. */
  readonly joined: readonly (readonly [number, number])[];
  /** For an edge with two walls, the faces that open between them beyond its ends. */
  readonly between: ReadonlyMap<number, readonly number[]>;
}

/**
 * Returns the slivers of a level, which `edgesOutdoors` needs in addition to the faces of each edge. Crossing walls
 * have none.
 */
export function sliversOf(graph: WallGraph, faces: Faces): Slivers {
  const joined: [number, number][] = [];
  const between = new Map<number, number[]>();
  faces.around.forEach((leaving, node) => {
    for (const [one, two] of passingPairs(graph, leaving, node)) {
      const ahead = facesBetween(graph, faces, leaving, one.ahead, two.ahead);
      const behind = facesBetween(graph, faces, leaving, one.behind, two.behind);
      if (!ahead && behind) between.set(one.ahead >> 1, [...(between.get(one.ahead >> 1) ?? []), ...behind]);
      if (!behind && ahead) between.set(one.behind >> 1, [...(between.get(one.behind >> 1) ?? []), ...ahead]);
      if (!ahead || !behind || isCrossing(leaving, one, two)) continue;
      for (const face of ahead) for (const other of behind) if (face !== other) joined.push([face, other]);
    }
  });
  return { joined, between };
}

/** Returns whether two walls cross at the node; then the areas between them before and after the node are separate. */
function isCrossing(leaving: readonly number[], one: PassingWall, two: PassingWall): boolean {
  const from = leaving.indexOf(one.ahead);
  const place = (h: number) => (leaving.indexOf(h) - from + leaving.length) % leaving.length;
  const turn = place(one.behind);
  return place(two.ahead) < turn !== place(two.behind) < turn;
}

/**
 * A wall that passes through a node: its direction, and the half-edges on which it leaves that way and the other way.
 */
interface PassingWall {
  readonly way: XY;
  readonly ahead: number;
  readonly behind: number;
}

/** Returns every pair of walls that pass a node at a very small angle, oriented alike. */
function passingPairs(graph: WallGraph, leaving: readonly number[], node: number): [PassingWall, PassingWall][] {
  if (leaving.length < 3 || leaving.length > HIGH_DEGREE || !mayHavePassingWalls(graph, leaving)) return [];
  const passing = passingLines(graph, leaving, node);
  return passing.flatMap((one, i) =>
    passing.slice(i + 1).flatMap((two): [PassingWall, PassingWall][] => {
      const [[ux, uy], [vx, vy]] = [one.way, two.way];
      if (Math.abs(ux * vy - uy * vx) > SMALL_SINE) return [];
      return ux * vx + uy * vy > 0 ? [[one, two]] : [[one, { way: two.way, ahead: two.behind, behind: two.ahead }]];
    }),
  );
}

/**
 * Edges shorter than this may deviate from the direction of their walls, mm: a node is up to the node tolerance beside
 * them.
 */
const SHORT: Mm = 1;

/**
 * Returns whether two edges may leave a node in almost the same direction: a quick test that is false for most nodes.
 */
function mayHavePassingWalls(graph: WallGraph, leaving: readonly number[]): boolean {
  let [px, py] = wayOf(graph, leaving[leaving.length - 1] as number);
  for (const h of leaving) {
    const [x, y] = wayOf(graph, h);
    const both = vectorLength(x, y) * vectorLength(px, py);
    if (vectorLength(x, y) < SHORT) return true;
    if (px * x + py * y > 0 && Math.abs(px * y - py * x) <= 3 * SMALL_SINE * both) return true;
    [px, py] = [x, y];
  }
  return false;
}

function passingLines({ edges }: WallGraph, leaving: readonly number[], node: number): PassingWall[] {
  const ends = new Map<CenterLine, { ahead?: number; behind?: number }>();
  for (const h of leaving) {
    for (const { line, start } of (edges[h >> 1] as GraphEdge).runs) {
      ends.set(line, { ...ends.get(line), [start === node ? 'ahead' : 'behind']: h });
    }
  }
  return [...ends].flatMap(([{ a, b }, { ahead, behind }]) => {
    if (ahead === undefined || behind === undefined) return [];
    const length = distance(a, b);
    return [{ way: [(b[0] - a[0]) / length, (b[1] - a[1]) / length] as const, ahead, behind }];
  });
}

/**
 * Returns the faces in the narrower of the two sectors between two half-edges of a node; null if the half-edges are the
 * same.
 */
function facesBetween(
  graph: WallGraph,
  { faceOf }: Faces,
  leaving: readonly number[],
  h: number,
  g: number,
): number[] | null {
  if (h === g) return null;
  const [first, last] = [leaving.indexOf(h), leaving.indexOf(g)].sort((i, j) => i - j) as [number, number];
  const [[ux, uy], [vx, vy]] = [wayOf(graph, leaving[first] as number), wayOf(graph, leaving[last] as number)];
  // Half-edges are sorted clockwise on screen: less than half a turn from the first to the last is the narrower sector.
  const isNarrow = ux * vy - uy * vx >= 0;
  const sector = isNarrow ? leaving.slice(first, last) : [...leaving.slice(last), ...leaving.slice(0, first)];
  return sector.map((k) => faceOf[k] as number);
}

function wayOf({ nodes, edges }: WallGraph, h: number): XY {
  const { from, to } = edges[h >> 1] as GraphEdge;
  const [a, b] = h & 1 ? [to, from] : [from, to];
  return [(nodes[b] as XY)[0] - (nodes[a] as XY)[0], (nodes[b] as XY)[1] - (nodes[a] as XY)[1]];
}
