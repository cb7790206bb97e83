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

/** One room that a detector may stand in. */
interface TaskRoom {
  readonly floor: readonly Polygon[];
  /** Which zones come near its floor, by rectangles. */
  readonly near: readonly number[];
}

/** A body and the distance to keep from it, less the top that carries the detector. */
interface RawZone {
  readonly body: Body;
  readonly keep: number;
  /** The body whose top it is, and how far within its edge the axis stands. */
  readonly top: { readonly body: Body; readonly depth: number } | null;
}

/** The work of a library: of each room's floor, what the zones leave. Everything that comes before is done already. */
export interface Task {
  readonly rooms: readonly TaskRoom[];
  /** Zones as polygons that hold the true zone and reach at most `ZONE_TOLERANCE` beyond it. */
  readonly zones: readonly (readonly Polygon[])[];
  /** The same zones before rounding. */
  readonly raw: readonly RawZone[];
  /** What the engine returns, square mm. */
  readonly area: number;
  /** Floor of the rooms, square mm. */
  readonly floorArea: number;
}

/** How far a zone's polygon may reach beyond the zone, mm: 1/16 in, what a tape is read to. */
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

/** Rings sorted into polygons: each outer ring with the holes in it. */
function polygonsOf(rings: readonly Ring[]): Polygon[] {
  const holes = rings.filter((ring) => signedArea(ring) < 0);
  return rings
    .filter((ring) => signedArea(ring) > 0)
    .map((outer) => [outer, ...holes.filter(([corner]) => corner && ringContains(outer, corner))]);
}

function meet(a: Extent, b: Extent): boolean {
  return a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;
}
