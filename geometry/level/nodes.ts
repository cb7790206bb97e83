import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { NODE_TOLERANCE } from './tolerances.ts';

/** Cell size of the point grid, mm: few points are within the node tolerance of the next cell. */
const CELL: Mm = 1;

/** A point this close to a member of a node does not extend the reach of the node, mm. */
const SAME_POINT: Mm = NODE_TOLERANCE / 100;

interface Known {
  readonly at: XY;
  readonly node: number;
}

/**
 * The nodes of a graph: points within the node tolerance of each other (chained) are merged, and the first represents
 * all.
 */
export class Nodes {
  readonly points: XY[] = [];
  private readonly squares = new Map<number, Known[]>();

  /** Returns the node of a point; a new one if none is near. */
  of(p: XY): number {
    let node = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = Math.floor((p[0] - NODE_TOLERANCE) / CELL); i <= Math.floor((p[0] + NODE_TOLERANCE) / CELL); i++) {
      for (let j = Math.floor((p[1] - NODE_TOLERANCE) / CELL); j <= Math.floor((p[1] + NODE_TOLERANCE) / CELL); j++) {
        for (const existing of this.squares.get(cellKey(i, j)) ?? []) {
          const gap = distance(existing.at, p);
          least = Math.min(least, gap);
          if (gap <= NODE_TOLERANCE && (node < 0 || existing.node < node)) node = existing.node;
        }
      }
    }
    if (node < 0) node = this.points.push(p) - 1;
    if (least > SAME_POINT) this.add(p, node);
    return node;
  }

  private add(at: XY, node: number): void {
    const key = cellKey(Math.floor(at[0] / CELL), Math.floor(at[1] / CELL));
    const square = this.squares.get(key);
    if (square) square.push({ at, node });
    else this.squares.set(key, [{ at, node }]);
  }
}

/** Two cells may share a key, so lookups also test the distance. */
function cellKey(i: number, j: number): number {
  return (Math.imul(i, 0x9e3779b1) + j) | 0;
}
