import type { Mm, Wall, XY } from '../plan/model.ts';
import { nearbyOf } from '../plane/nearby.ts';
import { along, distance } from '../plane/point.ts';
import { CROSSING_SINE, SNAP_DISTANCE } from './tolerances.ts';
import type { Notice } from './types.ts';

/** Where two walls nearly coincide. */
interface NearOverlap {
  readonly at: XY;
  readonly length: Mm;
}

/** More pairs than this are reported in groups, because nobody reads a thousand notices. */
const MOST_PAIRS = 50;

/**
 * Returns the stretch on which two center-lines are within half an inch of each other, if it is at least an inch long
 * and at least half of the shorter wall; null otherwise.
 */
function nearOverlap(one: Pick<Wall, 'from' | 'to'>, other: Pick<Wall, 'from' | 'to'>): NearOverlap | null {
  const length = distance(one.from, one.to);
  const shorter = Math.min(length, distance(other.from, other.to));
  if (shorter === 0) return null;
  const [ux, uy] = [(one.to[0] - one.from[0]) / length, (one.to[1] - one.from[1]) / length];
  const spot = ([x, y]: XY): XY => {
    const [px, py] = [x - one.from[0], y - one.from[1]];
    return [px * ux + py * uy, py * ux - px * uy];
  };
  const [s0, t0] = spot(other.from);
  const [s1, t1] = spot(other.to);
  const slope = (t1 - t0) / (s1 - s0);
  if (!(Math.abs(slope) <= CROSSING_SINE)) return null;
  let from = Math.max(0, Math.min(s0, s1));
  let to = Math.min(length, Math.max(s0, s1));
  // The interval in which the other line is within half an inch, unless it is parallel.
  if (slope === 0) {
    if (Math.abs(t0) > SNAP_DISTANCE) return null;
  } else {
    const [p, q] = [s0 + (-SNAP_DISTANCE - t0) / slope, s0 + (SNAP_DISTANCE - t0) / slope];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  if (to - from < Math.max(2 * SNAP_DISTANCE, shorter / 2)) return null;
  return { at: along(one.from, one.to, (from + to) / 2 / length), length: to - from };
}

/** Returns a key for every pair of some ids. */
export function pairsOf(ids: readonly string[]): string[] {
  // In very large groups, only pairs with the first id.
  if (ids.length > MOST_PAIRS) return ids.slice(1).map((id) => pairOf(ids[0] as string, id));
  return ids.flatMap((a, i) => ids.slice(i + 1).map((b) => pairOf(a, b)));
}

function pairOf(a: string, b: string): string {
  return a < b ? JSON.stringify([a, b]) : JSON.stringify([b, a]);
}

/** Returns a notice for every pair of walls that nearly coincide and is not in `reported`. */
export function nearOverlapNotices(walls: readonly Wall[], reported: ReadonlySet<string>): Notice[] {
  const found: (NearOverlap & { readonly ids: readonly [string, string] })[] = [];
  forNearPairs(
    [...walls].sort((a, b) => (a.id < b.id ? -1 : 1)),
    (one, other) => {
      if (!areNearlyParallel(one, other) || reported.has(pairOf(one.id, other.id))) return;
      const place = nearOverlap(one, other);
      if (place) found.push({ ...place, ids: [one.id, other.id] });
    },
  );
  return grouped(found);
}

/** Returns whether two walls are nearly parallel, in either direction. */
function areNearlyParallel(one: Wall, other: Wall): boolean {
  const dx = one.to[0] - one.from[0];
  const dy = one.to[1] - one.from[1];
  const ex = other.to[0] - other.from[0];
  const ey = other.to[1] - other.from[1];
  const across = dx * ey - dy * ex;
  const along = dx * ex + dy * ey;
  return Math.abs(across) <= CROSSING_SINE * Math.abs(along);
}

/** Calls `visit` for every pair of walls whose bounding boxes come within half an inch, in list order. */
function forNearPairs(walls: readonly Wall[], visit: (one: Wall, other: Wall) => void): void {
  const segments = walls.map(({ from, to }) => [from, to]);
  const findNear = nearbyOf(segments);
  walls.forEach((one, i) => {
    const near = findNear(segments[i] as readonly XY[], SNAP_DISTANCE, (k) => k > i);
    for (const k of near.sort((a, b) => a - b)) visit(one, walls[k] as Wall);
  });
}

function grouped(found: readonly (NearOverlap & { readonly ids: readonly [string, string] })[]): Notice[] {
  if (found.length <= MOST_PAIRS) return found.map((one) => ({ kind: 'walls-overlap', ...one }));
  const groups = new Map<string, { ids: Set<string>; at: XY; length: Mm }>();
  for (const { ids, at, length } of found) {
    const [a, b] = [groups.get(ids[0]), groups.get(ids[1])];
    const home = a ?? b ?? { ids: new Set<string>(), at, length };
    for (const id of [...ids, ...(a && b && a !== b ? b.ids : [])]) {
      home.ids.add(id);
      groups.set(id, home);
    }
    home.length = Math.max(home.length, length);
  }
  return [...new Set(groups.values())].map(({ ids, at, length }) => {
    return { kind: 'walls-overlap', ids: [...ids].sort(), at, length };
  });
}
