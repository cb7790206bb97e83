import { roomBar } from '../check/room.ts';
import { MEETS } from '../check/subjects.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan } from '../plan/model.ts';
import { effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { type FreeFloor, freeFloors } from './free-floor.ts';
import { obstaclesOf } from './obstacles.ts';
import type { LevelRegion, Probe, RoomRegion } from './types.ts';

export interface RegionOptions {
  /** Keep every plan and space limit by this much more, mm; 0 gives exactly the spots that no check blocks. */
  readonly spare?: Mm;
}

/**
 * Where the axis of a probe may stand on a level: every rule but `companion`, `level` and `direct-sun` met. Boundaries are
 * exact, lines and circular arcs, and areas are in closed form. A spot inside is never one that a check would block.
 * After an edit only the rooms are worked out anew that something which changed reaches.
 */
export function levelRegion(plan: Plan, model: LevelModel, probe: Probe, options: RegionOptions = {}): LevelRegion {
  const spare = options.spare ?? 0;
  const { all, zones } = obstaclesOf(plan, model, probe, spare);
  const height = heightBar(plan, model, probe, spare);
  const bars = model.rooms.map((room) => roomBar(room, plan.protocol));
  const open = model.rooms.filter((_, i) => !height && !bars[i]?.reason);
  const floors = freeFloors(model, open, all);
  return {
    probe,
    zones,
    rooms: model.rooms.map((room, i): RoomRegion => {
      const { reason, certain } = bars[i] ?? { reason: '', certain: true };
      if (reason) return closedRoom(room, reason, 'room-use', certain);
      if (height) return closedRoom(room, height.reason, height.rule, certain);
      const { rings, area } = floors.get(room) as FreeFloor;
      return { room, rings, area, barred: '', barredBy: null, decided: certain };
    }),
  };
}

function closedRoom(room: Room, barred: string, barredBy: RuleId, decided: boolean): RoomRegion {
  return { room, rings: [], area: 0, barred, barredBy, decided };
}

/** Why nothing may sit at the probe's height anywhere on the level; null when it may. */
function heightBar(
  plan: Plan,
  model: LevelModel,
  { base, tall }: Probe,
  spare: Mm,
): { readonly rule: RuleId; readonly reason: string } | null {
  const enough = spare > 0 ? spare : -MEETS;
  for (const { id, subject, least, most } of effectiveRules(plan.protocol)) {
    if (subject.of === 'height') {
      if (least !== null && base - least < enough) return { rule: id, reason: 'Too low above the floor.' };
      if (most !== null && most - base - tall < enough) return { rule: id, reason: 'Too high above the floor.' };
    }
    if (subject.of === 'ceiling' && least !== null && model.level.ceiling - base - tall - least < enough) {
      return { rule: id, reason: 'Too near the ceiling.' };
    }
  }
  return null;
}
