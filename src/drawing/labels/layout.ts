import { floorContains } from '../../../geometry/level/floor-contains.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Detector, Plan } from '../../../geometry/plan/model.ts';
import type { LevelRegion, Zone } from '../../../geometry/region/types.ts';
import type { Stretch } from '../../../geometry/region/visible-edges.ts';
import { openRooms } from '../floor.ts';
import { roomWords, thingNames, zoneName } from '../words.ts';
import { dimensionWriter, type PlacedDimension } from './dimensions.ts';
import { takeGround } from './grounds.ts';
import type { DimensionLabel, Label, LabelMedium, LabelSheet, RoomLabel, ThingLabel, ZoneLabel } from './label.ts';
import { type MeasuredLine, measuredLabel } from './measured.ts';
import { createPlacer, type Placer } from './placer.ts';
import { roomLabel } from './rooms.ts';
import { lineSlot, type Slot } from './slot.ts';
import { placeTags, type TagPlace } from './tags.ts';
import { type TapedGap, takeTapes, tapedLabels } from './taped.ts';
import { thingLabel } from './things.ts';
import { zoneLabels } from './zones.ts';

/** What the labels of a level say, and of what. Plan mm. */
export interface Labeled {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  /** What is seen of the outlines of the zones that have labels. */
  readonly edges: ReadonlyMap<Zone, readonly Stretch[]>;
  /** In the order of their importance. */
  readonly dimensions: readonly (readonly PlacedDimension[])[];
  readonly measured: readonly MeasuredLine[];
  /** Tapes from detectors to walls, where they are to show. */
  readonly taped?: readonly TapedGap[];
  /** Widths of the forms of a detector's tag, the fullest first. */
  readonly tagWidths: (detector: Detector) => readonly number[];
  /** Ground of what is written beside the labels: none may take it. */
  readonly reserved: readonly Slot[];
  /** Ground that is kept for marks and their tags, which are drawn over the labels. */
  readonly marks: readonly Slot[];
}

export interface Labels {
  readonly tags: ReadonlyMap<string, TagPlace>;
  readonly measured: readonly Label[];
  readonly taped: readonly Label[];
  readonly rooms: readonly RoomLabel[];
  readonly things: readonly ThingLabel[];
  readonly zones: readonly ZoneLabel[];
  readonly dimensions: readonly DimensionLabel[];
  /** Names that found no place. */
  readonly leftOff: readonly string[];
  /** The ground that is taken, for what is written over the labels. */
  readonly placer: Placer;
}

/**
 * All labels of a level in the order of their importance: detectors, measured lines, tapes, rooms, things, whole lengths, rules, strings of
 * openings. What finds no room is left out, detectors last of all.
 */
export function layOutLabels(labeled: Labeled, medium: LabelMedium): Labels {
  const { plan, model, region, edges, taped: tapes = [] } = labeled;
  const placer = createPlacer(medium.area, 4 * medium.type.fine);
  const sheet: LabelSheet = { ...medium, placer };
  for (const slot of labeled.reserved) placer.take(slot);
  for (const slot of labeled.marks) placer.take(slot, 'mark');
  takeGround(model, sheet);
  for (const { from, to } of labeled.measured) placer.take(lineSlot(from, to, 0.2 * medium.type.fine), 'line');
  takeTapes(tapes, sheet);
  const tags = placeTags(model, labeled.tagWidths, sheet);
  const measured = labeled.measured.map((line) => measuredLabel(line, labeled.measured, sheet));
  const taped = tapedLabels(tapes, sheet);
  const leftOff: string[] = [];
  const rooms = region.rooms.flatMap((each) => {
    const words = roomWords(each, plan);
    const label = roomLabel(each, words, sheet);
    if (!label) leftOff.push(words.title);
    return label ?? [];
  });
  const things = [...model.level.fixtures, ...model.level.objects].flatMap((thing) => {
    const names = thingNames(thing);
    const label = medium.isSmall ? null : thingLabel(thing, names, model.rooms, sheet);
    if (!label) leftOff.push(...names.slice(0, 1));
    return label ?? [];
  });
  const write = dimensionWriter(plan.display.length, sheet);
  const [first = [], ...others] = labeled.dimensions;
  const wholes = write(first);
  const open = openRooms(region);
  const zones = zoneLabels(
    edges,
    (zone) => zoneName(zone, plan, model.level),
    (p) => open.some(({ room }) => floorContains(room, p)),
    sheet,
  );
  const strings = others.flatMap(write);
  return { tags, measured, taped, rooms, things, zones, dimensions: [...wholes, ...strings], leftOff, placer };
}
