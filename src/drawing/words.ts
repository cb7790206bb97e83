import type { Check } from '../../geometry/check/types.ts';
import type { Room } from '../../geometry/level/types.ts';
import {
  capital,
  checkFigures,
  FIXTURE_NOUN,
  figureWithLimit,
  OPENING_NOUN,
  ROOM_USE_NOUN,
} from '../../geometry/messages/index.ts';
import type { Fixture, Level, Plan, PlanObject } from '../../geometry/plan/model.ts';
import type { RoomRegion, Zone } from '../../geometry/region/types.ts';
import { ruleOf } from '../../geometry/rules/profiles.ts';
import { formatArea, formatLength, formatRequired } from '../../geometry/units/index.ts';
import { roomSizeWords } from './room-size.ts';

/** The words that stand on the plan, the same on screen and on paper. */

/** "Sump pit 7 ft", "Window 3 ft"; of a stream, what it is. A required distance is never said smaller than it is. */
export function zoneName({ rule, subject, distance, stream }: Zone, plan: Plan, level: Level): string {
  if (stream) return 'Stream of air';
  const opening = level.openings.find(({ id }) => id === subject);
  const name = opening ? capital(OPENING_NOUN[opening.kind]) : ruleOf(plan.protocol, rule).name;
  return `${name} ${formatRequired(distance, plan.display.length)}`;
}

/** The names of a thing, the fullest first: its own, then what it is. */
export function thingNames(thing: Fixture | PlanObject): readonly string[] {
  const own = thing.name.trim();
  return [own, 'kind' in thing ? capital(FIXTURE_NOUN[thing.kind]) : ''].filter(Boolean);
}

/** What a room's label says: its name, floor, sizes, and why it holds no detector where it may not; else empty. */
export interface RoomWords {
  readonly title: string;
  readonly area: string;
  readonly size: string;
  readonly barred: string;
}

export function roomTitle({ label }: Room): string {
  return label?.name.trim() || (label ? capital(ROOM_USE_NOUN[label.use]) : 'Room without a name');
}

export function roomWords({ room, barred }: RoomRegion, { display }: Plan): RoomWords {
  const { label, floorArea } = room;
  return {
    title: roomTitle(room),
    area: formatArea(floorArea, display.length),
    size: roomSizeWords(room, display.length),
    barred: label ? barred : 'What is it used for?',
  };
}

/**
 * The figure on a measured line: what was measured, and what is needed where it is short. Toward caution, as in the tables: a least
 * distance is rounded down, a greatest one up. Only a stream is reached into.
 */
export function measureWords(check: Check, plan: Plan): string {
  const into = -(check.measured ?? 0);
  if (into > 0) return `${formatLength(into, plan.display.length, 'up')} into the stream`;
  return check.verdict === 'clear' ? checkFigures(check, plan).measured : figureWithLimit(check, plan);
}
