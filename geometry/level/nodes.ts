import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { TOUCH } from './touch.ts';

/** Side of the squares by which points are found, mm: few points lie within a touch of the next square. */
const SQUARE: Mm = 1;

/** A point this near to one that is known adds nothing to where its node reaches, mm. */
const SAME: Mm = TOUCH / 100;

interface Known {
  readonly at: XY;
  readonly node: number;
}

/** The nodes of a graph: points within a touch of each other (chained) are one, and the first of them stands for all. */
export class Nodes {
  readonly points: XY[] = [];
  private readonly squares = new Map<number, Known[]>();

  /** The node of a point, a new one where none is near. */
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

/** Two squares may share a key: whoever looks there asks for the distance too. */
function squareKey(i: number, j: number): number {
  return (Math.imul(i, 0x9e3779b1) + j) | 0;
}
