import type { LevelModel, Room } from '../level/types.ts';
import type { Detector, Mm, Plan, RoomUse, XY } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { ringsContain } from '../plane/ring.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { reasonCheck } from './measure.ts';
import { everyWall } from './subjects.ts';
import type { Check } from './types.ts';

/** Returns the room whose floor contains a point; null outdoors and within walls. */
export function roomAt(model: LevelModel, at: XY): Room | null {
  return model.rooms.find(({ floorRings }) => ringsContain(floorRings, at)) ?? null;
}

/** Why no detector may be in a room. `reason` is "" when a detector may be there; `certain` is false when it cannot be decided. */
export interface RoomBar {
  readonly reason: string;
  readonly certain: boolean;
}

const MAY: RoomBar = { reason: '', certain: true };

/** Returns whether the plan's profile allows a detector in a room. */
export function roomBar(room: Room | null, protocol: Plan['protocol']): RoomBar {
  const rule = roomRule(protocol);
  return rule ? roomBarOf(room, rule) : MAY;
}

/** Returns `roomBar` for each of several rooms. */
export function roomBars(rooms: readonly Room[], protocol: Plan['protocol']): RoomBar[] {
  const rule = roomRule(protocol);
  return rooms.map((room) => (rule ? roomBarOf(room, rule) : MAY));
}

function roomRule(protocol: Plan['protocol']): EffectiveRule | undefined {
  return effectiveRules(protocol).find(({ subject }) => subject.of === 'room');
}

function roomBarOf(room: Room | null, { subject }: EffectiveRule): RoomBar {
  if (!room) return { reason: 'It is in no room.', certain: true };
  const { labels } = room;
  if (labels.length === 0) return { reason: 'The room has no label, so its use is not known.', certain: false };
  const barred = subject.of === 'room' ? labels.filter(({ use }) => subject.barred.includes(use)) : [];
  const [first] = barred;
  if (!first) return MAY;
  if (barred.length === labels.length) return { reason: `No detector in ${roomWords(first.use)}.`, certain: true };
  return {
    reason: `The room is labeled both for a use that may hold a detector and as ${roomWords(first.use)}.`,
    certain: false,
  };
}

/** Wording after "No detector in …" for uses that are irregular. */
const USE_PHRASE: Partial<Readonly<Record<RoomUse, string>>> = {
  laundry: 'a laundry room',
  utility: 'a utility room',
  storage: 'a storage room',
  stair: 'a stairway',
  hall: 'a hallway',
  crawlspace: 'a crawl space',
};

function roomWords(use: RoomUse): string {
  return USE_PHRASE[use] ?? `a ${use}`;
}

/** Checks the use of the room that contains the axis, and that the whole rim is inside the room. */
export function checkRoom(model: LevelModel, detector: Detector, room: Room | null, rule: EffectiveRule): Check {
  const bar = roomBarOf(room, rule);
  if (bar.reason && bar.certain) return barredCheck(bar, room, rule);
  const toWall = distanceToWalls(model, detector.at);
  if (toWall < detector.radius - LIMIT_TOLERANCE) {
    return {
      ...reasonCheck(rule, 'blocked', 'Its rim reaches into a wall.'),
      required: detector.radius,
      measured: toWall,
      margin: toWall - detector.radius,
    };
  }
  // A wall within the rim blocks, whatever the use.
  return bar.reason ? barredCheck(bar, room, rule) : reasonCheck(rule, 'clear', '');
}

/** A use that the text itself does not exclude is reported as excluded by common practice. */
function barredCheck({ reason, certain }: RoomBar, room: Room | null, rule: EffectiveRule): Check {
  const row = reasonCheck(rule, certain ? 'blocked' : 'unknown', reason, false, room?.label?.use ?? null);
  const byHabit = certain && row.sources.every(({ mark }) => mark === 'common-practice');
  return byHabit ? { ...row, reason: `${reason} Common practice, no published source.` } : row;
}

function distanceToWalls(model: LevelModel, [x, y]: XY): Mm {
  let least: Mm = Number.POSITIVE_INFINITY;
  for (const { body } of everyWall(model)) least = Math.min(least, bodyDistance(body, x, y));
  return least;
}
