import { freeBoundary, Scratch } from '../arrangement/free-boundary.ts';
import { linkRings } from '../arrangement/link-rings.ts';
import { NearbyZones } from '../arrangement/nearby-zones.ts';
import { ringsArea } from '../arrangement/rings.ts';
import { mayReach, ringSpace, type Space } from '../arrangement/space.ts';
import type { ArcRing } from '../arrangement/types.ts';
import type { GrownZone } from '../arrangement/zone.ts';
import type { LevelModel, Room, WallPiece } from '../level/types.ts';
import { overlaps } from '../plane/extent.ts';
import { memoize } from '../plane/memoize.ts';
import type { Ring } from '../plane/types.ts';
import type { Obstacle } from './obstacles.ts';

/** The part of a room's floor that the obstacles leave for the axis of a probe. Area in mm². */
export interface FreeFloor {
  readonly rings: readonly ArcRing[];
  readonly area: number;
}

/**
 * The result for one list of obstacles; rooms are keyed by their center-line rings, which live as long as the walls.
 */
interface CachedFloors {
  readonly obstacles: readonly Obstacle[];
  readonly floors: Map<readonly Ring[], FreeFloor>;
}

/** Number of results cached per set of walls: the shading, one with extra margin, one at an adjacent height. */
const MOST_CACHED = 3;

const cachesOf = memoize((_: readonly WallPiece[]): CachedFloors[] => []);

/**
 * Returns the free floor of each room. Rooms that no changed obstacle reaches are taken from the cached result with
 * the fewest changes for the same walls. Obstacles are compared by identity.
 */
export function freeFloors(
  model: LevelModel,
  rooms: readonly Room[],
  obstacles: readonly Obstacle[],
): ReadonlyMap<Room, FreeFloor> {
  const caches = cachesOf(model.pieces);
  const { cache, changed } = closestCache(caches, obstacles);
  const floors = new Map<readonly Ring[], FreeFloor>();
  const stale: (readonly Ring[])[] = [];
  for (const { centerRings } of rooms) {
    const cached = cache?.floors.get(centerRings);
    if (cached && !mayReachOne(changed, ringSpace(centerRings))) floors.set(centerRings, cached);
    else stale.push(centerRings);
  }
  const nearby = new NearbyZones(zonesNear(stale.map(ringSpace), obstacles));
  const scratch = new Scratch();
  for (const rings of stale) floors.set(rings, freeFloor(ringSpace(rings), nearby, scratch));
  storeCache(caches, cache, changed.length === 0, { obstacles, floors });
  return new Map(rooms.map((room) => [room, floors.get(room.centerRings) as FreeFloor]));
}

function mayReachOne(changed: readonly Obstacle[], space: Space): boolean {
  for (const { grown } of changed) if (mayReach(space, grown)) return true;
  return false;
}

/** Returns the zones near any of the spaces: after an edit, a few adjacent rooms out of many. */
function zonesNear(spaces: readonly Space[], obstacles: readonly Obstacle[]): GrownZone[] {
  if (spaces.length === 0) return [];
  const all = {
    minX: Math.min(...spaces.map(({ extent }) => extent.minX)),
    minY: Math.min(...spaces.map(({ extent }) => extent.minY)),
    maxX: Math.max(...spaces.map(({ extent }) => extent.maxX)),
    maxY: Math.max(...spaces.map(({ extent }) => extent.maxY)),
  };
  const found: GrownZone[] = [];
  for (const { grown } of obstacles) if (overlaps(grown, all)) found.push(grown);
  return found;
}

function freeFloor(space: Space, nearby: NearbyZones, scratch: Scratch): FreeFloor {
  const rings = linkRings(freeBoundary(nearby.to(space), space, scratch));
  return { rings, area: ringsArea(rings) };
}

/** Beyond this many changes the comparison room by room costs more than it saves. */
const MOST_CHANGES = 64;

/** Returns the cached result with the fewest changed obstacles, and those obstacles: removed, moved and added. */
function closestCache(
  caches: readonly CachedFloors[],
  obstacles: readonly Obstacle[],
): { cache: CachedFloors | null; changed: readonly Obstacle[] } {
  let best: { cache: CachedFloors | null; changed: readonly Obstacle[] } = { cache: null, changed: [] };
  let fewest = MOST_CHANGES;
  for (const cache of caches) {
    const changed = changesBetween(cache.obstacles, obstacles, fewest);
    if (!changed) continue;
    fewest = changed.length;
    best = { cache, changed };
  }
  return best;
}

/**
 * Returns the elements that are in one list only or at another position; null when there are more than `most`. Finds
 * any number of single insertions, deletions and replacements, but groups of them only at one place in the list.
 */
export function changesBetween<T>(before: readonly T[], after: readonly T[], most: number): T[] | null {
  let endBefore = before.length;
  let endAfter = after.length;
  while (endBefore > 0 && endAfter > 0 && before[endBefore - 1] === after[endAfter - 1]) {
    endBefore--;
    endAfter--;
  }
  const changed: T[] = [];
  let i = 0;
  let k = 0;
  while (i < endBefore || k < endAfter) {
    if (i < endBefore && k < endAfter && before[i] === after[k]) {
      i++;
      k++;
      continue;
    }
    const added = i >= endBefore || (k + 1 < endAfter && after[k + 1] === before[i]);
    const removed = !added && (k >= endAfter || (i + 1 < endBefore && before[i + 1] === after[k]));
    if (!added) changed.push(before[i++] as T);
    if (!removed) changed.push(after[k++] as T);
    if (changed.length > most) return null;
  }
  return changed;
}

/**
 * Replaces the cached result that the new one was derived from, or merges into it when nothing changed, else drops the
 * oldest.
 */
function storeCache(caches: CachedFloors[], from: CachedFloors | null, same: boolean, made: CachedFloors): void {
  if (same && from) {
    for (const [rings, floor] of made.floors) from.floors.set(rings, floor);
    return;
  }
  const old = from ? caches.indexOf(from) : -1;
  if (old >= 0) caches.splice(old, 1);
  else if (caches.length >= MOST_CACHED) caches.shift();
  caches.push(made);
}
