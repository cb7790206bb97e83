import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Detector, Fixture, Plan, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/body.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../../geometry/region/types.ts';
import type { Stretch } from '../../../geometry/region/visible-edges.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { openRooms } from '../floor.ts';
import { roomWords, thingNames, zoneName } from '../words.ts';
import { type DimensionLabel, dimensionLabels } from './dimensions.ts';
import { takeGround } from './grounds.ts';
import { type MeasuredLine, measuredLabel, takeMeasured } from './measured.ts';
import type { Label, LabelMedium } from './medium.ts';
import { createPlacer, type Placer, type Slot } from './placer.ts';
import { roomLabel } from './rooms.ts';
import { placeTags, type TagPlace } from './tags.ts';
import { thingLabel } from './things.ts';
import { type ZoneLabel, zoneLabels } from './zones.ts';

/** What the labels of a level say, and of what. */
export interface Labeled {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  /** What is seen of the outlines of the zones that have labels. */
  readonly edges: ReadonlyMap<Zone, readonly Stretch[]>;
  /** In the order of their importance. */
  readonly dimensions: readonly (readonly RunningDimension[])[];
  readonly measured: readonly MeasuredLine[];
  /** Widths of the forms of a detector's tag, the fullest first. */
  readonly tagWidths: (detector: Detector) => readonly number[];
  /** Ground that no label may take. */
  readonly reserved: readonly Slot[];
}

export interface Labels {
  readonly tags: ReadonlyMap<string, TagPlace>;
  readonly measured: readonly Label[];
  readonly rooms: readonly (Label & { readonly region: RoomRegion })[];
  readonly things: readonly (Label & { readonly thing: Fixture | PlanObject })[];
  readonly zones: readonly ZoneLabel[];
  readonly dimensions: readonly DimensionLabel[];
  /** Names that found no place. */
  readonly leftOff: readonly string[];
  /** The ground that is taken, for what is written over the labels. */
  readonly placer: Placer;
}

/**
 * All labels of a level in the order of their importance: detectors, measured lines, rooms, things, whole lengths, rules, strings of
 * openings. What finds no room is left out, detectors last of all.
 */
export function layOutLabels(labeled: Labeled, medium: LabelMedium): Labels {
  const { plan, model, region, edges, measured, reserved } = labeled;
  const placer = createPlacer(medium.area, 4 * medium.type.fine);
  for (const slot of reserved) placer.take(slot);
  takeGround(model, medium, placer);
  for (const line of measured) takeMeasured(line, medium, placer);
  const tags = placeTags(model, labeled.tagWidths, medium, placer);
  const lines = measured.map((line) => measuredLabel(line, measured, 'dimension', medium, placer));
  const leftOff: string[] = [];
  const rooms = region.rooms.flatMap((each) => {
    const words = roomWords(each, plan);
    const label = roomLabel(each, words, medium, placer);
    if (!label) leftOff.push(words.title);
    return label ? [{ ...label, region: each }] : [];
  });
  const things = [...model.level.fixtures, ...model.level.objects].flatMap((thing) => {
    const names = thingNames(thing);
    const label = medium.isSmall ? null : thingLabel(thing, names, model.rooms, medium, placer);
    if (!label) leftOff.push(...names.slice(0, 1));
    return label ? [{ ...label, thing }] : [];
  });
  const words = ({ length }: RunningDimension) => formatMeasured(length, plan.display.length);
  const targets = createPlacer(null, 4 * medium.type.fine);
  const dimensionsOf = (row: readonly RunningDimension[] = []) => dimensionLabels(row, words, medium, placer, targets);
  const [first, ...others] = labeled.dimensions;
  const wholes = dimensionsOf(first);
  const zones = zoneLabels(edges, (zone) => zoneName(zone, plan, model.level), onOpenFloor(region), medium, placer);
  const strings = others.flatMap(dimensionsOf);
  return { tags, measured: lines, rooms, things, zones, dimensions: [...wholes, ...strings], leftOff, placer };
}

/** Whether a point lies on the floor of a room that is not out as a whole, mm. */
function onOpenFloor(region: LevelRegion): (p: XY) => boolean {
  const floors = openRooms(region).map(({ room }) => ({
    rings: room.floorRings,
    extent: ringExtent(room.floorRings.flat()),
  }));
  return ([x, y]) =>
    floors.some(
      ({ rings, extent: { minX, minY, maxX, maxY } }) =>
        x >= minX && x <= maxX && y >= minY && y <= maxY && ringsContain(rings, [x, y]),
    );
}
