import { buildLevel } from '../level/build-level.ts';
import type { Level, Plan } from '../plan/model.ts';
import { profileOf } from '../rules/profiles.ts';
import { levelBar } from './level.ts';

/** A level that is to be tested, and its number of test locations. */
export interface LevelToTest {
  readonly level: Level;
  readonly needed: number;
}

/** Returns the levels to test for the plan's purpose under its profile, with the number of locations on each. */
export function levelsToTest(plan: Plan): readonly LevelToTest[] {
  const { area } = profileOf(plan.protocol).coverage;
  return plan.levels
    .map((level) => ({ level, needed: neededOn(plan, level, area).needed }))
    .filter(({ needed }) => needed > 0);
}

/** Returns why a level is not to be tested, or how many locations it needs. */
export function neededOn(plan: Plan, level: Level, areaEach: number | null) {
  const bar = levelBar(plan, level);
  const floorArea = buildLevel(level).rooms.reduce((sum, room) => sum + room.floorArea, 0);
  return { bar, floorArea, needed: bar ? 0 : locationsFor(floorArea, areaEach) };
}

/** Rounding in the floor area, mm², which must not require another location. */
const ROUNDING = 1;

function locationsFor(floorArea: number, areaEach: number | null): number {
  return areaEach === null ? 1 : Math.max(1, Math.ceil((floorArea - ROUNDING) / areaEach));
}
