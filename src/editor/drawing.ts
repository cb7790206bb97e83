import type { Check } from '../../geometry/check/types.ts';
import { type RunningDimension, runningDimensions } from '../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { capital, checkFigures, FIXTURE_NOUN, figureWithLimit } from '../../geometry/messages/index.ts';
import type { Fixture, Mm, Plan, PlanObject } from '../../geometry/plan/model.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../geometry/region/types.ts';
import { type Stretch, visibleEdges } from '../../geometry/region/visible-edges.ts';
import { ruleOf } from '../../geometry/rules/profiles.ts';
import { formatArea, formatRequired } from '../../geometry/units/index.ts';
import type { RoomSign } from './paint/names/room-signs.ts';

/** What the layers draw, worked out once for each level and region; and the words that stand on the drawing. */

export const drawnEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones),
);

/** So fine, mm, edges are drawn while a hand pulls at the plan: a few px of a large house. */
const WHILE_PULLED: Mm = 200;

/** The same a little coarser where zones are new: for a picture that is gone with the next move of the hand. */
export const pulledEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones, WHILE_PULLED),
);

const dimensionsOf = new WeakMap<
  LevelModel['rooms'],
  { readonly openings: LevelModel['openings']; readonly dimensions: readonly RunningDimension[] }
>();
/** Every length that is written along a face: worked out anew only where rooms or openings are others. */
export function drawnDimensions(model: LevelModel): readonly RunningDimension[] {
  const known = dimensionsOf.get(model.rooms);
  if (known?.openings === model.openings) return known.dimensions;
  const dimensions = runningDimensions(model);
  dimensionsOf.set(model.rooms, { openings: model.openings, dimensions });
  return dimensions;
}

/** "Sump pit 7 ft", "Moving air: its stream". */
export function zoneName(zone: Zone, plan: Plan): string {
  const { name } = ruleOf(plan.protocol, zone.rule);
  return zone.stream ? `${name}: in the stream` : `${name} ${formatRequired(zone.distance, plan.display.length)}`;
}

/** The names of a thing, the fullest first: its own, then what it is. */
export function namesOfThing(thing: Fixture | PlanObject): readonly string[] {
  const own = thing.name.trim();
  return [own, 'kind' in thing ? capital(FIXTURE_NOUN[thing.kind]) : ''].filter(Boolean);
}

/** A room's name, floor, and why it holds no detector where it may not. */
export function roomSign(room: RoomRegion, plan: Plan, selection: readonly string[]): RoomSign {
  const { label, labelPoint, floorArea } = room.room;
  const area = formatArea(floorArea, plan.display.length);
  if (!label)
    return { name: 'Not named yet', lines: ['What is it used for?', area], at: labelPoint, room, chosen: false };
  const chosen = selection.includes(label.id);
  const name = label.name.trim() || 'Room without a name';
  return { name, lines: room.barred ? [area, 'no detector here'] : [area], at: label.at, room, chosen };
}

/** The figure on a measured line: what was measured, and what is needed where it is short. */
export function measureWords(check: Check, plan: Plan): string {
  return check.verdict === 'blocked' ? figureWithLimit(check, plan) : checkFigures(check, plan).measured;
}
