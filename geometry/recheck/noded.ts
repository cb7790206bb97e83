import type { XY } from '../plan/model.ts';
import { alongLine, type Line, SAME } from './center-lines.ts';
import { apart, cross, plus, segmentDistance, vector } from './plane.ts';

/** A stretch of center-line between two adjacent nodes, with every wall on it. */
export interface Piece {
  readonly a: XY;
  readonly b: XY;
  readonly lines: readonly Line[];
}

/** Returns the center-lines split wherever they meet, cross or coincide (noding); each stretch once. */
export function nodedPieces(lines: readonly Line[]): Piece[] {
  const nodes = new Nodes();
  const cuts = lines.map(({ from, to }) => new Set([nodes.at(from), nodes.at(to)]));
  lines.forEach((line, i) => {
    for (let j = 0; j < i; j++) cutBoth(line, lines[j] as Line, cuts[i] as Set<XY>, cuts[j] as Set<XY>, nodes);
  });
  const pieces = new Map<string, { a: XY; b: XY; lines: Line[] }>();
  lines.forEach((line, i) => {
    const stops = [...(cuts[i] as Set<XY>)].sort((p, q) => alongLine(line, p) - alongLine(line, q));
    for (let k = 1; k < stops.length; k++) add(pieces, stops[k - 1] as XY, stops[k] as XY, line, nodes);
  });
  return [...pieces.values()];
}

function cutBoth(one: Line, two: Line, cutsOne: Set<XY>, cutsTwo: Set<XY>, nodes: Nodes): void {
  let touching = false;
  for (const end of [one.from, one.to]) {
    if (segmentDistance(end, two.from, two.to) > SAME) continue;
    cutsTwo.add(nodes.at(end));
    touching = true;
  }
  for (const end of [two.from, two.to]) {
    if (segmentDistance(end, one.from, one.to) > SAME) continue;
    cutsOne.add(nodes.at(end));
    touching = true;
  }
  // An end that touches the other line is where the two meet; a crossing next to it is the same point.
  const crossing = touching ? null : crossingOf(one, two);
  if (!crossing) return;
  const node = nodes.at(crossing);
  cutsOne.add(node);
  cutsTwo.add(node);
}

function crossingOf(one: Line, two: Line): XY | null {
  const [u, v] = [vector(one.from, one.to), vector(two.from, two.to)];
  const turn = cross(u, v);
  if (turn === 0) return null;
  const between = vector(one.from, two.from);
  const [s, t] = [cross(between, v) / turn, cross(between, u) / turn];
  if (s <= 0 || s >= 1 || t <= 0 || t >= 1) return null;
  // For collinear walls both parameters are only rounding errors: the computed point is on one line and far from the other.
  const crossing = plus(one.from, u, s);
  return segmentDistance(crossing, two.from, two.to) <= SAME ? crossing : null;
}

function add(pieces: Map<string, { a: XY; b: XY; lines: Line[] }>, a: XY, b: XY, line: Line, nodes: Nodes): void {
  const key = [nodes.number(a), nodes.number(b)].sort((m, n) => m - n).join(' ');
  const existing = pieces.get(key);
  if (existing) existing.lines.push(line);
  else pieces.set(key, { a, b, lines: [line] });
}

/** Points within `SAME` of each other get one node, the first. */
class Nodes {
  readonly #cells = new Map<string, XY[]>();
  readonly #numbers = new Map<XY, number>();

  at(p: XY): XY {
    const [i, j] = [Math.floor(p[0] / SAME), Math.floor(p[1] / SAME)];
    for (let di = -1; di <= 1; di++) {
      for (let dj = -1; dj <= 1; dj++) {
        const existing = this.#cells.get(`${i + di} ${j + dj}`)?.find((node) => apart(node, p) <= SAME);
        if (existing) return existing;
      }
    }
    const cell = `${i} ${j}`;
    const node: XY = [p[0], p[1]];
    this.#cells.set(cell, [...(this.#cells.get(cell) ?? []), node]);
    this.#numbers.set(node, this.#numbers.size);
    return node;
  }

  number(node: XY): number {
    return this.#numbers.get(node) as number;
  }
}
