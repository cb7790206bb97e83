import { roomBars } from '../check/room.ts';
import { SUBTRACTION } from '../check/subjects.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan } from '../plan/model.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { type FreeFloor, freeFloors } from './free-floor.ts';
import { obstaclesOf } from './obstacles.ts';
import type { LevelRegion, Probe, RoomRegion } from './types.ts';

export interface RegionOptions {
  /**
   * Extra distance added to every plan and space limit, mm; with 0 the region is exactly the positions that no check
   * blocks.
   */
  readonly spare?: Mm;
}

/**
 * Returns where the axis of a probe may be on a level: every rule is met except `companion`, `level` and direct sun that is not computed.
 * Boundaries are exact (lines and circular arcs) and areas in closed form. A check never blocks a point inside. After
 * an edit only the rooms reached by a change are recomputed.
 */
export function levelRegion(plan: Plan, model: LevelModel, probe: Probe, options: RegionOptions = {}): LevelRegion {
  const spare = options.spare ?? 0;
  const { all, zones } = obstaclesOf(plan, model, probe, spare);
  const height = heightBar(plan, model, probe, spare);
  const bars = roomBars(model.rooms, plan.protocol);
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

/** Returns why no detector may be at the probe's height anywhere on the level; null if one may. */
function heightBar(
  plan: Plan,
  model: LevelModel,
  { base, tall }: Probe,
  spare: Mm,
): { readonly rule: RuleId; readonly reason: string } | null {
  const enough = (spare > 0 ? spare : -LIMIT_TOLERANCE) - SUBTRACTION;
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
