import { buildLevel } from '../level/build-level.ts';
import type { Level, Plan } from '../plan/model.ts';
import { profileOf } from '../rules/profiles.ts';
import { levelBar } from './level.ts';

/** A level that is to be tested, and in how many locations. */
export interface LevelToTest {
  readonly level: Level;
  readonly needed: number;
}

/** The levels that the plan's profile wants tested for its purpose, with how many locations each. */
export function levelsToTest(plan: Plan): readonly LevelToTest[] {
  const { area } = profileOf(plan.protocol).coverage;
  return plan.levels
    .map((level) => ({ level, needed: neededOn(plan, level, area).needed }))
    .filter(({ needed }) => needed > 0);
}

/** Why a level is not to be tested, or how many locations it needs. */
export function neededOn(plan: Plan, level: Level, areaEach: number | null) {
  const bar = levelBar(plan, level);
  const floorArea = buildLevel(level).rooms.reduce((sum, room) => sum + room.floorArea, 0);
  return { bar, floorArea, needed: bar ? 0 : locationsFor(floorArea, areaEach) };
}

/** A square millimetre of rounding does not ask for another location. */
const ROUNDING = 1;

function locationsFor(floorArea: number, areaEach: number | null): number {
  return areaEach === null ? 1 : Math.max(1, Math.ceil((floorArea - ROUNDING) / areaEach));
}
