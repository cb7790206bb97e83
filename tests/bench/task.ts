import { freeBoundary } from '../../geometry/arrangement/free-boundary.ts';
import { linkRings } from '../../geometry/arrangement/link-rings.ts';
import { reversedRing } from '../../geometry/arrangement/rings.ts';
import { EVERYWHERE } from '../../geometry/arrangement/space.ts';
import type { GrownZone } from '../../geometry/arrangement/zone.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import type { Body } from '../../geometry/plane/body.ts';
import { type Extent, ringExtent } from '../../geometry/plane/extent.ts';
import { ringContains, signedArea } from '../../geometry/plane/ring.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import { flattened } from '../../geometry/region/flatten.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { obstaclesOf } from '../../geometry/region/obstacles.ts';
import { onlyLevel, PROBE } from './plans.ts';

/** An outer ring and its holes. */
export type Polygon = readonly Ring[];

/** One room in which a detector may be placed. */
interface TaskRoom {
  readonly floor: readonly Polygon[];
  /** Indices of the zones near its floor, by bounding boxes. */
  readonly near: readonly number[];
}

/** A body and the distance to keep from it, without the top that carries the detector. */
interface RawZone {
  readonly body: Body;
  readonly keep: number;
  /** The body whose top it is, and the distance of the axis inside its edge, mm. */
  readonly top: { readonly body: Body; readonly depth: number } | null;
}

/** The work of a library: subtract the zones from each room's floor. All earlier steps are done already. */
export interface Task {
  readonly rooms: readonly TaskRoom[];
  /** Zones as polygons that contain the true zone and extend at most `ZONE_TOLERANCE` beyond it. */
  readonly zones: readonly (readonly Polygon[])[];
  /** The same zones before rounding. */
  readonly raw: readonly RawZone[];
  /** Area by the engine, mm². */
  readonly area: number;
  /** Floor area of the rooms, mm². */
  readonly floorArea: number;
}

/** Largest distance of a zone's polygon beyond the zone, mm: 1/16 in, the reading precision of a tape. */
export const ZONE_TOLERANCE = 1.5875;

export function taskOf(plan: Plan): Task {
  const model = buildLevel(onlyLevel(plan));
  const grown = obstaclesOf(plan, model, PROBE, 0).all.map((obstacle) => obstacle.grown);
  const open = levelRegion(plan, model, PROBE).rooms.filter(({ barred }) => barred === '');
  return {
    rooms: open.map(({ room: { floorRings } }) => {
      const extent = ringExtent(floorRings.flat());
      return {
        floor: polygonsOf(floorRings),
        near: grown.flatMap((zone, i) => (meet(zone, extent) ? [i] : [])),
      };
    }),
    zones: grown.map((zone) => polygonsOf(flattened(outlinesOf(zone), ZONE_TOLERANCE))),
    raw: grown.map(({ body, grow, hole }) => ({ body, keep: grow, top: hole })),
    area: open.reduce((sum, { area }) => sum + area, 0),
    floorArea: open.reduce((sum, { room }) => sum + room.floorArea, 0),
  };
}

function outlinesOf(zone: GrownZone) {
  return linkRings(freeBoundary([zone], EVERYWHERE)).map(reversedRing);
}

/** Returns rings as polygons: each outer ring with its holes. */
function polygonsOf(rings: readonly Ring[]): Polygon[] {
  const holes = rings.filter((ring) => signedArea(ring) < 0);
  return rings
    .filter((ring) => signedArea(ring) > 0)
    .map((outer) => [outer, ...holes.filter(([corner]) => corner && ringContains(outer, corner))]);
}

function meet(a: Extent, b: Extent): boolean {
  return a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;
}
