import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { TOUCH } from './touch.ts';

/** Cell size of the point grid, mm: few points are within the node tolerance of the next cell. */
const SQUARE: Mm = 1;

/** A point this close to a member of a node does not extend the reach of the node, mm. */
const SAME: Mm = TOUCH / 100;

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
    for (let i = Math.floor((p[0] - TOUCH) / SQUARE); i <= Math.floor((p[0] + TOUCH) / SQUARE); i++) {
      for (let j = Math.floor((p[1] - TOUCH) / SQUARE); j <= Math.floor((p[1] + TOUCH) / SQUARE); j++) {
        for (const known of this.squares.get(squareKey(i, j)) ?? []) {
          const gap = distance(known.at, p);
          least = Math.min(least, gap);
          if (gap <= TOUCH && (node < 0 || known.node < node)) node = known.node;
        }
      }
    }
    if (node < 0) node = this.points.push(p) - 1;
    if (least > SAME) this.add(p, node);
    return node;
  }

  private add(at: XY, node: number): void {
    const key = squareKey(Math.floor(at[0] / SQUARE), Math.floor(at[1] / SQUARE));
    const square = this.squares.get(key);
    if (square) square.push({ at, node });
    else this.squares.set(key, [{ at, node }]);
  }
}

/** Two cells may share a key, so lookups also test the distance. */
function squareKey(i: number, j: number): number {
  return (Math.imul(i, 0x9e3779b1) + j) | 0;
}
