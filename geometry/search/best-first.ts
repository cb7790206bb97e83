import { LIMIT_TOLERANCE } from '../check/subjects.ts';
import type { Mm } from '../plan/model.ts';
import { Heap } from './heap.ts';

/** Something that may be chosen: a place for one detector or for several. */
export interface Found {
  /** What it has to spare, mm. */
  readonly margin: Mm;
}

/** A search for what has the most to spare, by halving sets of places. */
export interface Search<Node, Place extends Found> {
  readonly starts: readonly Node[];
  /**
   * The most that any place of a node has, negative infinity when it holds none; no need to look into what is at most `enough`.
   * Places that are come upon on the way are handed to `found`.
   */
  assess(node: Node, enough: Mm, found: (place: Place) => void): Mm;
  /** The parts of a node; none when it is too small to matter. */
  split(node: Node): readonly Node[];
  /** Whether a place may not stand beside one that was chosen. */
  clash(place: Place, chosen: Place): boolean;
  /** Whether no place of a node may stand beside one that was chosen. */
  barred(node: Node, chosen: Place): boolean;
}

export interface SearchOptions {
  readonly count: number;
  /** How much less than the best there is a chosen place may have, mm. */
  readonly tolerance: Mm;
}

/** A chosen place, and what no place that may stand beside those before it exceeds. */
export type Chosen<Place> = Place & { readonly bound: Mm };

/** Places that a check would block by rounding alone are not offered. */
const LEAST_MARGIN: Mm = -LIMIT_TOLERANCE + 1e-9;

/**
 * Bounds are rounded up to whole steps, mm. Along the middle of a corridor very many nodes promise the same but for rounding; as
 * equals, of which the last comes first, they are not gone through one by one before any is looked into.
 */
const BOUND_STEP: Mm = 2 ** -13;

/**
 * Nodes that are looked at before a search gives up being exact. None of thousands of random levels needs a tenth; a level
 * made to defeat the search does not freeze the app, and the bounds that come back stay true.
 */
const MOST_NODES = 100_000;

/**
 * The places with the most to spare, the best first, each within the tolerance of the best that may stand beside those before
 * it. Best first (Land and Doig 1960): the node that promises most is split next, and a place is chosen once no node
 * promises more than the tolerance above it. No node is dropped for what it promises, so that the bounds hold.
 */
export function bestFirst<Node, Place extends Found>(
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
  const look = (node: Node, most: Mm) => {
    if (chosen.some((one) => search.barred(node, one))) return;
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
      if (!chosen.some((one) => search.clash(place, one))) chosen.push({ ...place, bound });
      continue;
    }
    const most = nodes.topRank;
    const node = nodes.pop();
    if (node === null || tired) break;
    if (chosen.some((one) => search.barred(node, one))) continue;
    for (const part of search.split(node)) look(part, most);
  }
  return inOrder(chosen);
}

/**
 * The most to spare first: what was chosen later may by a part of the tolerance have more. What keeps away from those before
 * one in this order was still open when the first of the others was chosen, so the greatest of their bounds holds.
 */
function inOrder<Place extends Found>(chosen: readonly Chosen<Place>[]): Chosen<Place>[] {
  const sorted = [...chosen].sort((a, b) => b.margin - a.margin);
  let bound = Number.NEGATIVE_INFINITY;
  for (let k = sorted.length - 1; k >= 0; k--) {
    const one = sorted[k] as Chosen<Place>;
    bound = Math.max(bound, one.bound);
    sorted[k] = { ...one, bound };
  }
  return sorted;
}
