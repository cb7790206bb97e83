import type { Mm, XY } from '../plan/model.ts';
import { distance, vectorLength } from '../plane/point.ts';
import type { Faces } from './faces.ts';
import type { GraphEdge, WallGraph } from './graph.ts';
import { type CentreLine, CROWD } from './touch.ts';

/** Walls that turn by less than this against each other, as the sine of the angle, leave a sliver between them where they pass a node. */
const HARDLY = 0.02;

/**
 * Where two walls pass one node almost in one line, what lies between them before the node and behind it is one space, pinched where
 * their lines come within a touch of each other: a wall that crosses there must not part it.
 */
export interface Slivers {
  /** Faces that are one space but for the pinch, two by two. */
  readonly joined: readonly (readonly [number, number])[];
  /** For an edge on which two walls run, the face that opens between them behind an end of it. */
  readonly between: ReadonlyMap<number, readonly number[]>;
}

/** Returns the slivers of a level: what `edgesOutdoors` needs beside the faces of each edge. Crossings are none. */
export function sliversOf(graph: WallGraph, faces: Faces): Slivers {
  const joined: [number, number][] = [];
  const between = new Map<number, number[]>();
  faces.around.forEach((leaving, node) => {
    for (const [one, two] of passingPairs(graph, leaving, node)) {
      const ahead = gapOf(graph, faces, leaving, one.ahead, two.ahead);
      const behind = gapOf(graph, faces, leaving, one.behind, two.behind);
      if (!ahead && behind) between.set(one.ahead >> 1, [...(between.get(one.ahead >> 1) ?? []), ...behind]);
      if (!behind && ahead) between.set(one.behind >> 1, [...(between.get(one.behind >> 1) ?? []), ...ahead]);
      if (!ahead || !behind || isCrossing(leaving, one, two)) continue;
      for (const face of ahead) for (const other of behind) if (face !== other) joined.push([face, other]);
    }
  });
  return { joined, between };
}

/** Whether two walls change sides at the node: what lies between them before it and behind it is then not one space. */
function isCrossing(leaving: readonly number[], one: Passing, two: Passing): boolean {
  const from = leaving.indexOf(one.ahead);
  const place = (h: number) => (leaving.indexOf(h) - from + leaving.length) % leaving.length;
  const turn = place(one.behind);
  return place(two.ahead) < turn !== place(two.behind) < turn;
}

/** A wall that passes a node: its way, and the half-edges on which it leaves that way and the other way. */
interface Passing {
  readonly way: XY;
  readonly ahead: number;
  readonly behind: number;
}

/** Every two walls that pass a node almost in one line, both looked at the same way. */
function passingPairs(graph: WallGraph, leaving: readonly number[], node: number): [Passing, Passing][] {
  if (leaving.length < 3 || leaving.length > CROWD || !leavesTwiceOneWay(graph, leaving)) return [];
  const passing = passingLines(graph, leaving, node);
  return passing.flatMap((one, i) =>
    passing.slice(i + 1).flatMap((two): [Passing, Passing][] => {
      const [[ux, uy], [vx, vy]] = [one.way, two.way];
      if (Math.abs(ux * vy - uy * vx) > HARDLY) return [];
      return ux * vx + uy * vy > 0 ? [[one, two]] : [[one, { way: two.way, ahead: two.behind, behind: two.ahead }]];
    }),
  );
}

/** Edges shorter than this, mm, may lie across their walls: a node stands up to a touch beside them. */
const SHORT: Mm = 1;

/** Whether two edges may leave a node almost the same way: at most nodes none do, and no more need be asked. */
function leavesTwiceOneWay(graph: WallGraph, leaving: readonly number[]): boolean {
  let [px, py] = wayOf(graph, leaving[leaving.length - 1] as number);
  for (const h of leaving) {
    const [x, y] = wayOf(graph, h);
    const both = vectorLength(x, y) * vectorLength(px, py);
    if (vectorLength(x, y) < SHORT) return true;
    if (px * x + py * y > 0 && Math.abs(px * y - py * x) <= 3 * HARDLY * both) return true;
    [px, py] = [x, y];
  }
  return false;
}

function passingLines({ edges }: WallGraph, leaving: readonly number[], node: number): Passing[] {
  const ends = new Map<CentreLine, { ahead?: number; behind?: number }>();
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

/** The faces in the narrower of the two sectors between two half-edges that leave a node; null where they are one. */
function gapOf(graph: WallGraph, { faceOf }: Faces, leaving: readonly number[], h: number, g: number): number[] | null {
  if (h === g) return null;
  const [first, last] = [leaving.indexOf(h), leaving.indexOf(g)].sort((i, j) => i - j) as [number, number];
  const [[ux, uy], [vx, vy]] = [wayOf(graph, leaving[first] as number), wayOf(graph, leaving[last] as number)];
  // Half-edges leave clockwise on screen: less than half a turn from the first to the last is the narrower sector.
  const isNarrow = ux * vy - uy * vx >= 0;
  const sector = isNarrow ? leaving.slice(first, last) : [...leaving.slice(last), ...leaving.slice(0, first)];
  return sector.map((k) => faceOf[k] as number);
}

function wayOf({ nodes, edges }: WallGraph, h: number): XY {
  const { from, to } = edges[h >> 1] as GraphEdge;
  const [a, b] = h & 1 ? [to, from] : [from, to];
  return [(nodes[b] as XY)[0] - (nodes[a] as XY)[0], (nodes[b] as XY)[1] - (nodes[a] as XY)[1]];
}
