import type { Mm, XY } from '../plan/model.ts';
import { vectorLength } from '../plane/point.ts';
import { bestFirst, type Chosen } from './best-first.ts';
import type { Square } from './field/squares.ts';
import { type Ground, marginOfAll } from './ground.ts';
import { type GroupShape, rotatedOffsets, rotationChord, widened } from './group-shapes.ts';
import { FINEST } from './search-spots.ts';

/** A place for several detectors found by a search. */
export interface GroupPlace {
  readonly ground: Ground;
  /** The common middle of the detectors. */
  readonly x: Mm;
  readonly y: Mm;
  readonly at: readonly XY[];
  readonly margin: Mm;
}

/** Middles in a square, rotated by an angle ± a spread, radians, with the members moved outward by `least` to `most`, mm. */
interface Node {
  readonly ground: Ground;
  readonly square: Square;
  readonly angle: number;
  readonly spread: number;
  readonly least: Mm;
  readonly most: Mm;
  /** False: one of the largest squares, so far bounded without building its list, which is built only if its bound is the greatest. */
  readonly assessed: boolean;
  /** Upper bound by the middles alone, which holds for every rotation, mm; null until it is calculated. */
  byMiddle: Mm | null;
}

export interface GroupSearch {
  readonly count: number;
  /** Least distance between the middles of two groups, mm. */
  readonly apart: Mm;
  readonly tolerance: Mm;
  /** Middles of groups that were chosen earlier. */
  readonly taken: readonly XY[];
}

/**
 * Returns the best places for a group on several grounds, apart from each other; the smallest margin of the members
 * counts.
 */
export function searchGroups(
  grounds: readonly Ground[],
  shape: GroupShape,
  { count, apart, tolerance, taken }: GroupSearch,
): Chosen<GroupPlace>[] {
  const free = ({ x, y }: GroupPlace) => taken.every((at) => vectorLength(at[0] - x, at[1] - y) >= apart);
  return bestFirst<Node, GroupPlace>(
    {
      starts: grounds.flatMap((ground) =>
        ground.field.squares(ground.extent).map(
          (square): Node => ({
            ground,
            square,
            angle: 0,
            spread: shape.period / 2,
            least: 0,
            most: shape.slack,
            assessed: false,
            byMiddle: null,
          }),
        ),
      ),
      assess: (node, enough, found) =>
        assessNode(node, shape, enough, (place) => {
          if (free(place)) found(place);
        }),
      split: (node) => partsOf(node, shape),
      conflicts: (place, one) => vectorLength(place.x - one.x, place.y - one.y) < apart,
      excluded: ({ square: { x, y, half } }, one) =>
        vectorLength(Math.abs(x - one.x) + half, Math.abs(y - one.y) + half) < apart,
    },
    { count, tolerance },
  );
}

/** Halves the range that moves the members most: the square, the angle or the distance outward. */
function partsOf(node: Node, { extent }: GroupShape): Node[] {
  const { ground, square, angle, spread, least, most, assessed } = node;
  if (!assessed) return [{ ...node, assessed: true }];
  const reach = square.half * Math.SQRT2;
  const way = rotationChord(extent, spread);
  const out = most - least;
  if (reach + way + out < FINEST) return [];
  if (out > Math.max(reach, way)) {
    const middle = (least + most) / 2;
    // The nearer half comes last, because among equal bounds the last added comes first.
    return [
      { ...node, least: middle },
      { ...node, most: middle },
    ];
  }
  if (way <= reach) {
    return ground.field.quarters(square).map((quarter) => ({ ...node, square: quarter, byMiddle: null }));
  }
  const half = spread / 2;
  return [angle - half, angle + half].map((turned) => ({ ...node, angle: turned, spread: half }));
}

/**
 * Returns an upper bound for the worst member: from the middle alone, for any rotation; then from each member with its
 * displacement.
 */
function assessNode(node: Node, shape: GroupShape, enough: Mm, found: (place: GroupPlace) => void): Mm {
  const { ground, square, angle, spread } = node;
  const { x, y, half } = square;
  const { field } = ground;
  const reach = half * Math.SQRT2;
  // No member is farther from the middle of the square than this.
  const farthest = reach + shape.extent;
  if (!node.assessed) return field.upperBound(square, enough - farthest) + farthest;
  if (node.byMiddle === null) {
    if (ground.inside(x, y) + farthest < 0) return Number.NEGATIVE_INFINITY;
    node.byMiddle = field.assess(square, x, y, reach, shape, enough).upper;
  }
  let upper = node.byMiddle;
  if (upper <= enough) return upper;
  // The members at their innermost offsets: every other arrangement of the node moves them by at most `way`.
  const offsets = widened(shape.offsets, node.least);
  const at = rotatedOffsets(offsets, x, y, angle);
  const way = reach + rotationChord(shape.extent, spread) + node.most - node.least;
  const uphill: XY[] = [];
  let depth = Number.POSITIVE_INFINITY;
  let worst = Number.POSITIVE_INFINITY;
  for (const [px, py] of at) {
    depth = Math.min(depth, ground.inside(px, py));
    if (depth + way < 0) return Number.NEGATIVE_INFINITY;
    const assessment = field.around(px, py, way, enough);
    uphill.push([assessment.x, assessment.y]);
    upper = Math.min(upper, assessment.upper);
    worst = Math.min(worst, assessment.margin);
  }
  const margin = depth < 0 ? null : worst;
  if (margin !== null) found({ ground, x, y, at, margin });
  // A row is moved onto the line through the points where its members have a greater margin.
  if (shape.width === 0 && uphill.some(([ux, uy], k) => ux !== at[k]?.[0] || uy !== at[k]?.[1])) {
    const moved = alignedWith(offsets, uphill);
    const there = marginOfAll(ground, moved.at);
    if (there !== null && there > (margin ?? Number.NEGATIVE_INFINITY)) found({ ground, ...moved, margin: there });
  }
  return upper;
}

/** Returns a row about the mean of some points, from the first toward the last. */
function alignedWith(offsets: readonly XY[], points: readonly XY[]): Pick<GroupPlace, 'x' | 'y' | 'at'> {
  const [first, last] = [points[0] as XY, points[points.length - 1] as XY];
  const x = points.reduce((sum, point) => sum + point[0], 0) / points.length;
  const y = points.reduce((sum, point) => sum + point[1], 0) / points.length;
  return { x, y, at: rotatedOffsets(offsets, x, y, Math.atan2(last[1] - first[1], last[0] - first[0])) };
}
