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
import { createPlacer, type Placer } from './placer.ts';
import { roomLabel } from './rooms.ts';
import type { Slot } from './slot.ts';
import { placeTags, type TagPlace } from './tags.ts';
import { thingLabel } from './things.ts';
import { zoneLabels } from './zones.ts';

/** What the labels of a level are made from. Plan mm. */
export interface Labeled {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  /** Visible stretches of the outlines of the zones that get labels. */
  readonly edges: ReadonlyMap<Zone, readonly Stretch[]>;
  /** Groups of dimensions, the most important first. */
  readonly dimensions: readonly (readonly PlacedDimension[])[];
  /** Measured lines and tapes of a printed plan; null on the screen. */
  readonly lines: LabeledLines | null;
  /** Widths of the forms of a detector's tag, the fullest first. */
  readonly tagWidths: (detector: Detector) => readonly number[];
  /** Slots of other texts, which no label may cover. */
  readonly reserved: readonly Slot[];
  /** Ground that is reserved for marks and their tags, which are drawn over the labels. */
  readonly marks: readonly Slot[];
}

/** Lines with lengths on them. Their code (`paper-lines.ts`) loads with the printed plan, to keep it out of the start bundle. */
export interface LabeledLines {
  /** Takes the ground of the lines, so that tags are placed beside them. */
  readonly take: (sheet: LabelSheet) => void;
  readonly write: (sheet: LabelSheet) => Pick<Labels, 'measured' | 'taped'>;
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
  /** The taken ground, for texts that are placed after the labels. */
  readonly placer: Placer;
}

/**
 * Returns all labels of a level, placed in the order of their importance: detectors, measured lines, tapes, rooms, things, overall lengths,
 * rules, strings of openings. A label that finds no free place is left out; tags of detectors are the last to lack one.
 */
export function layOutLabels(labeled: Labeled, medium: LabelMedium): Labels {
  const { plan, model, region, edges, lines } = labeled;
  const placer = createPlacer(medium.area, 4 * medium.type.fine);
  const sheet: LabelSheet = { ...medium, placer };
  for (const slot of labeled.reserved) placer.take(slot);
  for (const slot of labeled.marks) placer.take(slot, 'mark');
  takeGround(model, sheet);
  lines?.take(sheet);
  const tags = placeTags(model, labeled.tagWidths, sheet);
  const { measured, taped } = lines?.write(sheet) ?? { measured: [], taped: [] };
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
