import type { Mm } from '../plan/model.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { Heap } from './heap.ts';

/** A candidate: a place for one detector or for several. */
export interface Candidate {
  /** Its margin, mm. */
  readonly margin: Mm;
}

/** A branch-and-bound search for the places with the greatest margin. */
export interface Search<Node, Place extends Candidate> {
  readonly starts: readonly Node[];
  /**
   * Returns an upper bound of the margin of all places of a node; negative infinity if it has none. The bound need not
   * be tight at or below `enough`.
   * Places found during the assessment are passed to `found`.
   */
  assess(node: Node, enough: Mm, found: (place: Place) => void): Mm;
  /** Splits a node into parts; none when it is too small to matter. */
  split(node: Node): readonly Node[];
  /** Whether a place is too close to one that was chosen. */
  conflicts(place: Place, chosen: Place): boolean;
  /** Whether every place of a node is too close to one that was chosen. */
  excluded(node: Node, chosen: Place): boolean;
}

export interface SearchOptions {
  readonly count: number;
  /** How far below the optimum a chosen place may be, mm. */
  readonly tolerance: Mm;
}

/** A chosen place, with an upper bound for all places compatible with those before it. */
export type Chosen<Place> = Place & { readonly bound: Mm };

/** Places that a check would block because of rounding alone are not offered. */
const LEAST_MARGIN: Mm = -LIMIT_TOLERANCE + 1e-9;

/**
 * Bounds are rounded up to multiples of this, mm. Along the middle of a corridor, very many nodes have the same bound
 * except for rounding. Of nodes with equal bounds, the last added comes first, so they are explored depth first.
 */
const BOUND_STEP: Mm = 2 ** -13;

/**
 * Node limit. Thousands of random levels need less than a tenth of it. On a level made to defeat the search the app does
 * not freeze, and the returned bounds remain valid.
 */
const MOST_NODES = 100_000;

/**
 * Returns the places with the greatest margins, best first, each within the tolerance of the best that is compatible
 * with those before it. Best-first branch and bound (Land and Doig, 1960): the node with the greatest bound is split
 * next, and a place is chosen once no bound exceeds its margin by more than the tolerance. No node is pruned by its
 * bound, so that the bounds hold.
 */
export function bestFirst<Node, Place extends Candidate>(
  search: Search<Node, Place>,
  { count, tolerance }: SearchOptions,
): Chosen<Place>[] {
  const nodes = new Heap<Node>();
  const places = new Heap<Place>();
  const chosen: Chosen<Place>[] = [];
  let looked = 0;
  const found = (place: Place) => {
    if (place.margin >= LEAST_MARGIN) places.push(place, place.margin);
  };
  const isExcluded = (node: Node): boolean => {
    for (const one of chosen) if (search.excluded(node, one)) return true;
    return false;
  };
  const look = (node: Node, most: Mm) => {
    if (isExcluded(node)) return;
    looked++;
    const upper = search.assess(node, Math.max(LEAST_MARGIN, places.topRank + tolerance), found);
    if (upper >= LEAST_MARGIN) nodes.push(node, Math.ceil(Math.min(most, upper) / BOUND_STEP) * BOUND_STEP);
  };
  for (const node of search.starts) look(node, Number.POSITIVE_INFINITY);
  while (chosen.length < count) {
    const tired = looked > MOST_NODES;
    if (places.topRank > Number.NEGATIVE_INFINITY && (tired || nodes.topRank <= places.topRank + tolerance)) {
      const bound = Math.max(nodes.topRank, places.topRank);
      const place = places.pop() as Place;
      if (!chosen.some((one) => search.conflicts(place, one))) chosen.push({ ...place, bound });
      continue;
    }
    const most = nodes.topRank;
    const node = nodes.pop();
    if (node === null || tired) break;
    if (isExcluded(node)) continue;
    for (const part of search.split(node)) look(part, most);
  }
  return byMargin(chosen);
}

/**
 * Sorts by margin, because a later choice may exceed an earlier one within the tolerance. Every place that is compatible
 * with the places before one in this order was still available when the first of the remaining ones was chosen, so the
 * greatest bound of the remaining ones holds.
 */
function byMargin<Place extends Candidate>(chosen: readonly Chosen<Place>[]): Chosen<Place>[] {
  const sorted = [...chosen].sort((a, b) => b.margin - a.margin);
  let bound = Number.NEGATIVE_INFINITY;
  for (let k = sorted.length - 1; k >= 0; k--) {
    const one = sorted[k] as Chosen<Place>;
    bound = Math.max(bound, one.bound);
    sorted[k] = { ...one, bound };
  }
  return sorted;
}
