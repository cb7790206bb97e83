import Flatbush from 'flatbush';
import type { Mm, Wall, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/body.ts';
import { along, distance } from '../plane/point.ts';
import { SNAP } from './touch.ts';
import type { Notice } from './types.ts';

/** Where two walls lie on one another. */
interface LaidOn {
  readonly at: XY;
  readonly length: Mm;
}

/** Walls turned by more than this against each other, as the sine of the angle, cross: they do not lie on one another. */
const BESIDE = 0.1;

/** More pairs than this are told in groups: nobody reads a thousand remarks. */
const MOST_PAIRS = 50;

/**
 * The stretch on which the centre-lines of two walls lie on or almost on one another: within half an inch, for at least an inch
 * and for half of the shorter wall. Null where they do not.
 */
function laidOn(one: Pick<Wall, 'from' | 'to'>, other: Pick<Wall, 'from' | 'to'>): LaidOn | null {
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
  if (!(Math.abs(slope) <= BESIDE)) return null;
  let from = Math.max(0, Math.min(s0, s1));
  let to = Math.min(length, Math.max(s0, s1));
  // Where the other is within half an inch: between two places, unless it runs along.
  if (slope === 0) {
    if (Math.abs(t0) > SNAP) return null;
  } else {
    const [p, q] = [s0 + (-SNAP - t0) / slope, s0 + (SNAP - t0) / slope];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  if (to - from < Math.max(2 * SNAP, shorter / 2)) return null;
  return { at: along(one.from, one.to, (from + to) / 2 / length), length: to - from };
}

/** Every two of some ids, as one word each. */
export function pairsOf(ids: readonly string[]): string[] {
  // Of very many in one place every one with the first says enough.
  if (ids.length > MOST_PAIRS) return ids.slice(1).map((id) => pairOf(ids[0] as string, id));
  return ids.flatMap((a, i) => ids.slice(i + 1).map((b) => pairOf(a, b)));
}

function pairOf(a: string, b: string): string {
  return a < b ? JSON.stringify([a, b]) : JSON.stringify([b, a]);
}

/** A notice for every two walls that lie askew on one another; those that are `told` of already are left out. */
export function askewNotices(walls: readonly Wall[], told: ReadonlySet<string>): Notice[] {
  const found: (LaidOn & { readonly ids: readonly [string, string] })[] = [];
  forNearPairs(
    [...walls].sort((a, b) => (a.id < b.id ? -1 : 1)),
    (one, other) => {
      if (!runBeside(one, other) || told.has(pairOf(one.id, other.id))) return;
      const place = laidOn(one, other);
      if (place) found.push({ ...place, ids: [one.id, other.id] });
    },
  );
  return grouped(found);
}

/** Whether two walls run the same way or the opposite way, or nearly so. */
function runBeside(one: Wall, other: Wall): boolean {
  const dx = one.to[0] - one.from[0];
  const dy = one.to[1] - one.from[1];
  const ex = other.to[0] - other.from[0];
  const ey = other.to[1] - other.from[1];
  const across = dx * ey - dy * ex;
  const along = dx * ex + dy * ey;
  return Math.abs(across) <= BESIDE * Math.abs(along);
}

/** Calls back for every two walls whose extents come within half an inch of each other, the first in the list first. */
function forNearPairs(walls: readonly Wall[], visit: (one: Wall, other: Wall) => void): void {
  if (walls.length === 0) return;
  const extents = walls.map(({ from, to }) => ringExtent([from, to]));
  const index = new Flatbush(walls.length);
  for (const { minX, minY, maxX, maxY } of extents) index.add(minX, minY, maxX, maxY);
  index.finish();
  walls.forEach((one, i) => {
    const { minX, minY, maxX, maxY } = extents[i] as Extent;
    const near = index.search(minX - SNAP, minY - SNAP, maxX + SNAP, maxY + SNAP, (k) => k > i);
    for (const k of near.sort((a, b) => a - b)) visit(one, walls[k] as Wall);
  });
}

function grouped(found: readonly (LaidOn & { readonly ids: readonly [string, string] })[]): Notice[] {
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
