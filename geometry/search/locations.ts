import { neededOn } from '../check/needed-locations.ts';
import { buildLevel } from '../level/build-level.ts';
import type { Room } from '../level/types.ts';
import type { Detector, Level, Plan } from '../plan/model.ts';
import { levelRegion } from '../region/level-region.ts';
import type { Probe } from '../region/types.ts';
import { profileOf } from '../rules/profiles.ts';
import type { Source } from '../rules/types.ts';

/** How many locations a level needs, and where they can be. */
export interface LevelLocations {
  readonly level: Level;
  /** Why the level is not to be tested; empty when it is. */
  readonly bar: string;
  /** Floor of all its rooms, square mm. */
  readonly floorArea: number;
  /** Locations that the profile asks for; 0 where the level is not to be tested. */
  readonly needed: number;
  /** Locations on the plan: a pair, or a single detector. */
  readonly placed: number;
  readonly missing: number;
  /** Rooms that can hold a detector at the probe's height, the one with most space first; square mm. */
  readonly rooms: readonly { readonly room: Room; readonly area: number }[];
}

export interface Locations {
  readonly levels: readonly LevelLocations[];
  /** The floor area of a level for which one location is enough, square mm; null where the profile has no figure. */
  readonly areaEach: number | null;
  readonly sources: readonly Source[];
}

/**
 * Which levels the plan's profile wants tested for its purpose, with how many locations, which rooms can hold them, and
 * what is still missing. A floor area that is met exactly needs no further location: 2,000 sq ft is one, a hair more two.
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
  const placed = locationCount(level.detectors);
  const rooms = levelRegion(plan, model, probe)
    .rooms.filter(({ area }) => area > 0)
    .map(({ room, area }) => ({ room, area }))
    .sort((a, b) => b.area - a.area);
  return { level, bar, floorArea, needed, placed, missing: Math.max(0, needed - placed), rooms };
}

/** Detectors set side by side are one location. */
function locationCount(detectors: readonly Detector[]): number {
  return new Set(detectors.map(({ id, pair }) => (pair === null ? `single ${id}` : `pair ${pair}`))).size;
}
