import { freeBoundary, Scratch } from '../arrangement/free-boundary.ts';
import { linkRings } from '../arrangement/link-rings.ts';
import { NearbyZones } from '../arrangement/nearby-zones.ts';
import { ringsArea } from '../arrangement/rings.ts';
import type { Space } from '../arrangement/space.ts';
import { mayReach, ringSpace } from '../arrangement/space.ts';
import type { ArcRing } from '../arrangement/types.ts';
import type { GrownZone } from '../arrangement/zone.ts';
import type { LevelModel, Room, WallPiece } from '../level/types.ts';
import { overlaps } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import type { Ring } from '../plane/types.ts';
import type { Obstacle } from './obstacles.ts';

/** What obstacles leave of a room for the axis of a probe. Area in square mm. */
export interface FreeFloor {
  readonly rings: readonly ArcRing[];
  readonly area: number;
}

/** What was worked out for one list of obstacles; rooms by their centre-line rings, which live as long as the walls. */
interface Memory {
  readonly obstacles: readonly Obstacle[];
  readonly floors: Map<readonly Ring[], FreeFloor>;
}

/** How many lists of obstacles are kept for one set of walls: the shading, one with tape to spare, a neighbouring height. */
const KEPT = 3;

const memoriesOf = memoize((_: readonly WallPiece[]): Memory[] => []);

/**
 * What the obstacles leave of each room. Rooms that no changed obstacle reaches are taken over from the last list of
 * obstacles with the same walls: obstacles are compared by identity.
 */
export function freeFloors(
  model: LevelModel,
  rooms: readonly Room[],
  obstacles: readonly Obstacle[],
): ReadonlyMap<Room, FreeFloor> {
  const memories = memoriesOf(model.pieces);
  const { memory, changed } = nearestMemory(memories, obstacles);
  const floors = new Map<readonly Ring[], FreeFloor>();
  const stale: (readonly Ring[])[] = [];
  for (const { centreRings } of rooms) {
    const known = memory?.floors.get(centreRings);
    const space = ringSpace(centreRings);
    if (known && !changed.some(({ grown }) => mayReach(space, grown))) floors.set(centreRings, known);
    else stale.push(centreRings);
  }
  const nearby = new NearbyZones(grownAbout(stale.map(ringSpace), obstacles));
  const scratch = new Scratch();
  for (const rings of stale) floors.set(rings, freeFloor(ringSpace(rings), nearby, scratch));
  remember(memories, memory, changed.length === 0, { obstacles, floors });
  return new Map(rooms.map((room) => [room, floors.get(room.centreRings) as FreeFloor]));
}

/** Those that come near any of the spaces: after an edit a few rooms side by side out of many. */
function grownAbout(spaces: readonly Space[], obstacles: readonly Obstacle[]): GrownZone[] {
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

/** More changes than this, and comparing room by room costs more than it saves. */
const MANY = 64;

/** The memory from which fewest obstacles have changed, and those: gone, moved and new ones. */
function nearestMemory(
  memories: readonly Memory[],
  obstacles: readonly Obstacle[],
): { memory: Memory | null; changed: readonly Obstacle[] } {
  let best: { memory: Memory | null; changed: readonly Obstacle[] } = { memory: null, changed: [] };
  let fewest = MANY;
  for (const memory of memories) {
    const changed = changesBetween(memory.obstacles, obstacles, fewest);
    if (!changed) continue;
    fewest = changed.length;
    best = { memory, changed };
  }
  return best;
}

/**
 * What is in one list only, or has come to stand elsewhere in it; null when that is more than `most`. Single items that came,
 * went or were replaced are met one by one; several that came or went together only at one place of the list.
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
    const came = i >= endBefore || (k + 1 < endAfter && after[k + 1] === before[i]);
    const went = !came && (k >= endAfter || (i + 1 < endBefore && before[i + 1] === after[k]));
    if (!came) changed.push(before[i++] as T);
    if (!went) changed.push(after[k++] as T);
    if (changed.length > most) return null;
  }
  return changed;
}

/** The new memory takes the place of the one that it grew from when that is only a step behind, else of the oldest. */
function remember(memories: Memory[], from: Memory | null, same: boolean, made: Memory): void {
  if (same && from) {
    for (const [rings, floor] of made.floors) from.floors.set(rings, floor);
    return;
  }
  const old = from ? memories.indexOf(from) : -1;
  if (old >= 0) memories.splice(old, 1);
  else if (memories.length >= KEPT) memories.shift();
  memories.push(made);
}
