import { neededOn } from '../check/needed-locations.ts';
import { countLocations } from '../check/side-by-side.ts';
import { buildLevel } from '../level/build-level.ts';
import type { Room } from '../level/types.ts';
import type { Level, Plan } from '../plan/model.ts';
import { levelRegion } from '../region/level-region.ts';
import type { Probe } from '../region/types.ts';
import { profileOf } from '../rules/profiles.ts';
import type { Source } from '../rules/types.ts';

/** How many locations a level needs, and where they can be. */
export interface LevelLocations {
  readonly level: Level;
  /** Why the level is not to be tested; "" when it is. */
  readonly bar: string;
  /** Total floor area of its rooms, mm². */
  readonly floorArea: number;
  /** Required number of locations; 0 if the level is not to be tested. */
  readonly needed: number;
  /** Locations on the plan: detectors side by side count as one. */
  readonly placed: number;
  readonly missing: number;
  /** Rooms that allow a detector at the probe's height, the largest free area first; mm². */
  readonly rooms: readonly { readonly room: Room; readonly area: number }[];
}

export interface Locations {
  readonly levels: readonly LevelLocations[];
  /** The floor area of a level for which one location is enough, mm²; null where the profile has no figure. */
  readonly areaEach: number | null;
  readonly sources: readonly Source[];
}

/**
 * Returns the levels to test for the plan's purpose under its profile, the number of locations each, the rooms that
 * allow them, and what is missing. An area met exactly needs no further location: 2,000 sq ft needs one, slightly more
 * needs two.
 */
export function testLocations(plan: Plan, probe: Probe): Locations {
  const { coverage } = profileOf(plan.protocol);
  return {
    levels: plan.levels.map((level) => levelLocations(plan, level, probe, coverage.area)),
    areaEach: coverage.area,
    sources: coverage.sources,
  };
}

function levelLocations(plan: Plan, level: Level, probe: Probe, areaEach: number | null): LevelLocations {
  const model = buildLevel(level);
  const { bar, floorArea, needed } = neededOn(plan, level, areaEach);
  const placed = countLocations(level.detectors);
  const rooms = levelRegion(plan, model, probe)
    .rooms.filter(({ area }) => area > 0)
    .map(({ room, area }) => ({ room, area }))
    .sort((a, b) => b.area - a.area);
  return { level, bar, floorArea, needed, placed, missing: Math.max(0, needed - placed), rooms };
}
