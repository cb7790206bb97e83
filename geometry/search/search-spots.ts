import type { Mm, XY } from '../plan/model.ts';
import { vectorLength } from '../plane/point.ts';
import { bestFirst, type Chosen } from './best-first.ts';
import { SINGLE_POINT } from './field/assess.ts';
import type { Square } from './field/squares.ts';
import type { Ground } from './ground.ts';

/** A place for one detector found by a search. */
export interface Place {
  readonly ground: Ground;
  readonly x: Mm;
  readonly y: Mm;
  readonly margin: Mm;
}

/** A square of a ground's field in which places are searched. */
interface Node {
  readonly ground: Ground;
  readonly square: Square;
  /** False: one of the largest squares, so far bounded without building its list. */
  readonly evaluated: boolean;
  /**
   * How far the rim is inside the ground with the axis in the middle, mm; infinite if it is inside everywhere in the square.
   */
  depth: Mm;
}

export interface SpotSearch {
  readonly count: number;
  /** Least distance between the axes of two places, mm. */
  readonly apart: Mm;
  readonly tolerance: Mm;
  /** Places that are already chosen. */
  readonly taken: readonly XY[];
}

/** Places closer than this are the same, mm: a smaller square is not split. */
export const FINEST: Mm = 1e-3;

/** Returns the best places for one detector on several grounds, apart from each other. */
export function searchSpots(grounds: readonly Ground[], options: SpotSearch): Chosen<Place>[] {
  const { count, apart, tolerance, taken } = options;
  const free = ({ x, y }: Place) => taken.every((at) => vectorLength(at[0] - x, at[1] - y) >= apart);
  const starts: Node[] = [];
  for (const ground of grounds) {
    for (const square of ground.field.squares(ground.extent)) {
      starts.push({ ground, square, evaluated: false, depth: 0 });
    }
  }
  return bestFirst<Node, Place>(
    {
      starts,
      assess: (node, enough, found) =>
        assessNode(
          node,
          enough,
          taken.length === 0
            ? found
            : (place) => {
                if (free(place)) found(place);
              },
        ),
      split: partsOf,
      conflicts: (place, one) => vectorLength(place.x - one.x, place.y - one.y) < apart,
      excluded: ({ square: { x, y, half } }, one) =>
        vectorLength(Math.abs(x - one.x) + half, Math.abs(y - one.y) + half) < apart,
    },
    { count, tolerance },
  );
}

function partsOf({ ground, square, evaluated, depth }: Node): Node[] {
  if (!evaluated) return [{ ground, square, evaluated: true, depth }];
  if (square.half < FINEST) return [];
  const within = depth >= square.half * Math.SQRT2 ? Number.POSITIVE_INFINITY : 0;
  return ground.field.quarters(square).map((quarter) => ({ ground, square: quarter, evaluated: true, depth: within }));
}

/** Returns an upper bound for a square. Computes its depth too and keeps it for its parts. */
function assessNode(node: Node, enough: Mm, found: (place: Place) => void): Mm {
  const { ground, square } = node;
  const { x, y, half, level } = square;
  const { field } = ground;
  const reach = half * Math.SQRT2;
  if (!node.evaluated) return field.upperBound(square, enough - reach) + reach;
  if (node.depth !== Number.POSITIVE_INFINITY) node.depth = ground.inside(x, y);
  if (node.depth + reach < 0) return Number.NEGATIVE_INFINITY;
  if (level >= 0) {
    const margin = field.middle(square);
    if (node.depth >= 0) found({ ground, x, y, margin });
    return margin + reach;
  }
  const assessment = field.assess(square, x, y, reach, SINGLE_POINT, enough);
  if (node.depth >= 0) found({ ground, x, y, margin: assessment.margin });
  if (assessment.x === x && assessment.y === y) return assessment.upper;
  const margin = field.margin(assessment.x, assessment.y);
  if (margin > assessment.margin && ground.inside(assessment.x, assessment.y) >= 0)
    found({ ground, x: assessment.x, y: assessment.y, margin });
  return assessment.upper;
}
