import { roomAt } from '../../../geometry/check/room.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { roomTitle } from '../../drawing/words.ts';
import { carrierWords } from '../carrier.ts';
import { tapeWords } from '../tape-distances.ts';
import { clipped } from './document-blocks.ts';

export interface PlacedDetector {
  readonly detector: Detector;
  readonly name: string;
  readonly level: string;
  readonly room: string;
  /** Distances from its rim to the nearest walls; empty where no wall is near. */
  readonly fromWalls: string;
  /** Height of its base above the floor. */
  readonly height: string;
  /** Its carrier, ", on the table"; empty where that is not known. */
  readonly carrier: string;
}

/** Returns every detector of the plan with its place, level by level. */
export function placedDetectors(plan: Plan): readonly PlacedDetector[] {
  return plan.levels.flatMap((level) => {
    const model = level.detectors.length > 0 ? buildLevel(level) : null;
    return model ? level.detectors.map((detector) => placedDetector(plan, level, model, detector)) : [];
  });
}

function placedDetector(plan: Plan, level: Level, model: LevelModel, detector: Detector): PlacedDetector {
  const room = roomAt(model, detector.at);
  return {
    detector,
    name: detector.label.trim() || detector.id,
    level: level.name.trim() || level.id,
    room: room ? roomTitle(room) : 'Outside the rooms',
    fromWalls: tapeWords(plan, model, detector),
    height: formatMeasured(detector.base, plan.display.length),
    carrier: carrierWords(level, detector),
  };
}

/** More detectors than this are counted, not named: occupants look for a room, not for a label. */
const NAMED = 6;

/** Returns a line per room: "A1 and A2: Family room, Basement"; of many detectors a line per level: "9 detectors on Basement: Lounge, …". */
export function describePlaces(plan: Plan): readonly string[] {
  const placed = placedDetectors(plan);
  const many = placed.length > NAMED;
  const places = new Map<string, PlacedDetector[]>();
  for (const each of placed) {
    const place = many ? clipped(each.level) : `${clipped(each.room)}, ${clipped(each.level)}`;
    places.set(place, [...(places.get(place) ?? []), each]);
  }
  return [...places].map(([place, there]) => {
    if (!many) return `${listed(there.map(({ name }) => clipped(name)))}: ${place}`;
    const rooms = [...new Set(there.map(({ room }) => clipped(room)))];
    return `${counted(there.length, 'detector')} on ${place}: ${listed(rooms)}`;
  });
}
