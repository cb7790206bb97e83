import type { Mm, XY } from '../plan/model.ts';
import { vectorLength } from '../plane/point.ts';
import { bestFirst, type Chosen } from './best-first.ts';
import { SINGLE } from './field/assess.ts';
import type { Square } from './field/squares.ts';
import type { Ground } from './ground.ts';

/** A place for one detector that a search came upon. */
export interface Place {
  readonly ground: Ground;
  readonly x: Mm;
  readonly y: Mm;
  readonly margin: Mm;
}

/** A square of a ground's field in which places are looked for. */
interface Node {
  readonly ground: Ground;
  readonly square: Square;
  /** One of the largest squares is first judged by what is at hand; only when it promises most is its list made. */
  readonly judged: boolean;
  /** How far the rim is inside the ground with the axis in the middle, mm; infinite where it is inside all over the square. */
  depth: Mm;
}

export interface SpotSearch {
  readonly count: number;
  /** How far the axes of two places are apart at the least, mm. */
  readonly apart: Mm;
  readonly tolerance: Mm;
  /** Places that are taken already. */
  readonly taken: readonly XY[];
}

/** What is nearer than this is one place, mm: a square that is smaller is not halved. */
export const FINEST: Mm = 1e-3;

/** The best places for one detector on several grounds, well apart. */
export function searchSpots(grounds: readonly Ground[], options: SpotSearch): Chosen<Place>[] {
  const { count, apart, tolerance, taken } = options;
  const free = (x: Mm, y: Mm) => taken.every((at) => vectorLength(at[0] - x, at[1] - y) >= apart);
  return bestFirst<Node, Place>(
    {
      starts: grounds.flatMap((ground) =>
        ground.field.squares(ground.extent).map((square) => ({ ground, square, judged: false, depth: 0 })),
      ),
      assess: (node, enough, found) =>
        assessNode(node, enough, (place) => {
          if (free(place.x, place.y)) found(place);
        }),
      split: partsOf,
      clash: (place, one) => vectorLength(place.x - one.x, place.y - one.y) < apart,
      barred: ({ square: { x, y, half } }, one) =>
        vectorLength(Math.abs(x - one.x) + half, Math.abs(y - one.y) + half) < apart,
    },
    { count, tolerance },
  );
}

function partsOf({ ground, square, judged, depth }: Node): Node[] {
  if (!judged) return [{ ground, square, judged: true, depth }];
  if (square.half < FINEST) return [];
  const within = depth >= square.half * Math.SQRT2 ? Number.POSITIVE_INFINITY : 0;
  return ground.field.quarters(square).map((quarter) => ({ ground, square: quarter, judged: true, depth: within }));
}

/** The most to be had in a square. Its depth is found on the way and kept for its parts. */
function assessNode(node: Node, enough: Mm, found: (place: Place) => void): Mm {
  const { ground, square } = node;
  const { x, y, half, level } = square;
  const { field } = ground;
  const reach = half * Math.SQRT2;
  if (!node.judged) return field.atMost(square, enough - reach) + reach;
  if (node.depth !== Number.POSITIVE_INFINITY) node.depth = ground.inside(x, y);
  if (node.depth + reach < 0) return Number.NEGATIVE_INFINITY;
  if (level >= 0) {
    const margin = field.middle(square);
    if (node.depth >= 0) found({ ground, x, y, margin });
    return margin + reach;
  }
  const seen = field.assess(square, x, y, reach, SINGLE, enough);
  if (node.depth >= 0) found({ ground, x, y, margin: seen.margin });
  if (seen.x === x && seen.y === y) return seen.upper;
  const margin = field.margin(seen.x, seen.y);
  if (margin > seen.margin && ground.inside(seen.x, seen.y) >= 0) found({ ground, x: seen.x, y: seen.y, margin });
  return seen.upper;
}
