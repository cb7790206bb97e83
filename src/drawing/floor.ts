import { memoize } from '../../geometry/plane/memoize.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../geometry/region/types.ts';
import { type Stretch, zoneExtent } from '../../geometry/region/visible-edges.ts';
import { type HatchName, roomHatch, ruleHatch } from '../theme/hatches.ts';
import { linesPart, type Part, ringsPart, type Shape } from './display-list.ts';

/** The floor: white where a detector may be placed, hatched where a rule excludes it. Plan mm. */

const floorPart = memoize(({ room }: RoomRegion): Part => ringsPart(room.floorRings));
const whitePart = memoize(({ rings }: RoomRegion): Part => ringsPart(rings));
const zonePart = memoize((zone: Zone): Part => ringsPart(zone.outlines, zoneExtent(zone)));
const sunlitPart = memoize((ring: Ring): Part => ringsPart([ring]));
const seenEdgesPart = memoize((stretches: readonly Stretch[]): Part => linesPart(stretches));
const zoneHatch = ({ rule }: Zone) => ruleHatch(rule);

/** Returns the rooms that are not barred as a whole. */
export function openRooms({ rooms }: Pick<LevelRegion, 'rooms'>): readonly RoomRegion[] {
  return rooms.filter(({ barred }) => !barred);
}

/** Floors in the color of excluded floor, and white where a detector may be placed. */
export const floorShapes = memoize(({ rooms }: LevelRegion): readonly Shape[] => [
  { ink: { fill: 'ground', rule: 'evenodd' }, parts: rooms.map(floorPart) },
  { ink: { fill: 'paper', rule: 'evenodd' }, parts: rooms.map(whitePart) },
]);

/**
 * Returns the excluded floor: each rule's zones in its own hatch, clipped to the floors of the rooms that are not barred as a whole; a
 * barred room has one hatch all over.
 * @param edges the visible stretches of each zone's outline
 */
export function zoneShapes(
  region: LevelRegion,
  zones: readonly Zone[],
  edges: ReadonlyMap<Zone, readonly Stretch[]>,
): readonly Shape[] {
  const within = openRooms(region).map(floorPart);
  return [
    ...hatched(region.rooms, roomHatch, floorPart),
    ...hatched(zones, zoneHatch, zonePart).map((shape) => ({ ...shape, within })),
    ...hatched(sunlitOf(zones), () => 'sunlit', sunlitPart).map((shape) => ({ ...shape, within })),
    {
      ink: { line: 'zone', color: 'hatchEdge' },
      parts: zones.map((zone) => seenEdgesPart(edges.get(zone) ?? NONE)),
      within,
    },
  ];
}

const NONE: readonly Stretch[] = [];

/** The floor that direct sun crosses. */
const sunlitOf = (zones: readonly Zone[]): readonly Ring[] => zones.flatMap(({ sunlit }) => (sunlit ? [sunlit] : []));

/** Returns the edge of the floor where a detector may be placed. */
export function regionEdge({ rooms }: LevelRegion): Shape {
  return { ink: { line: 'region', color: 'clear' }, parts: rooms.map(whitePart) };
}

/** Returns zones that are pointed at, tinted and with their whole edge. */
export function pointedZones(region: LevelRegion, zones: readonly Zone[]): readonly Shape[] {
  const within = openRooms(region).map(floorPart);
  return zones.flatMap((zone): readonly Shape[] => [
    { ink: { fill: 'accent', opacity: 0.08 }, parts: [zonePart(zone)], within },
    { ink: { line: 'chosen', color: 'accent' }, parts: [zonePart(zone)], within },
  ]);
}

/** Returns the hatches on the drawing, in the order of the legend. */
export function usedHatches({ rooms }: LevelRegion, zones: readonly Zone[]): readonly HatchName[] {
  const sunlit = sunlitOf(zones).map((): HatchName => 'sunlit');
  const names = [...zones.map(zoneHatch), ...sunlit, ...rooms.map(roomHatch)];
  return [...new Set(names)].filter((name) => name !== null);
}

/** One shape for each hatch: a hatch drawn zone by zone would be darker where zones overlap. */
function hatched<T>(
  all: readonly T[],
  hatchOf: (one: T) => HatchName | null,
  partOf: (one: T) => Part,
): readonly Shape[] {
  const hatches = [...new Set(all.map(hatchOf))].filter((hatch) => hatch !== null);
  return hatches.map((hatch) => ({ ink: { hatch }, parts: all.filter((one) => hatchOf(one) === hatch).map(partOf) }));
}
