import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { openingMiddle, subjectName } from '../../geometry/messages/subject.ts';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { ringExtent } from '../../geometry/plane/extent.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { keepSunFloor, sunFloor } from '../../geometry/sun/sun-floor.ts';
import { sunTimes } from '../../geometry/sun/times.ts';

/** An opening that lets direct sun in. */
interface SunWindow {
  readonly id: string;
  /** "the window to the south". */
  readonly name: string;
  /** Allowed area gained by keeping it covered, mm². */
  readonly back: number;
}

/** The allowed area of a level and the openings whose sun reduces it, largest reduction first. */
export interface SunTake {
  /** Allowed area with the direct sun of all openings, mm². */
  readonly allowed: number;
  readonly windows: readonly SunWindow[];
  /** Allowed area gained by keeping all of them covered, mm². */
  readonly all: number;
}

/**
 * Computes the allowed area gained by closing a curtain, for each opening that lets direct sun in. Yields after each, so that a page stays
 * responsive. Returns null if direct sun is not computed.
 */
export function* sunWindowSteps(plan: Plan, model: LevelModel, probe: Probe): Generator<void, SunTake | null> {
  const times = sunTimes(plan);
  const swept = times && sunFloor(model, times, probe);
  if (!times || swept?.state !== 'known') return null;
  const allowed = areaOf(plan, model, probe);
  yield;
  const covered = (ids: ReadonlySet<string>): number => {
    const level = withCover(model.level, ids);
    const darker = buildLevel(level);
    // The sun through the other openings does not change.
    const areas = swept.areas.filter(({ opening }) => !ids.has(opening));
    keepSunFloor(darker, times, probe, { state: 'known', areas });
    return areaOf({ ...plan, levels: plan.levels.map((one) => (one.id === level.id ? level : one)) }, darker, probe);
  };
  const windows: SunWindow[] = [];
  for (const { opening } of swept.areas) {
    windows.push({ id: opening, name: nameOf(plan, model, opening), back: covered(new Set([opening])) - allowed });
    yield;
  }
  const all = covered(new Set(swept.areas.map(({ opening }) => opening))) - allowed;
  return { allowed, windows: windows.sort((one, other) => other.back - one.back), all };
}

const areaOf = (plan: Plan, model: LevelModel, probe: Probe): number =>
  levelRegion(plan, model, probe).rooms.reduce((sum, { area }) => sum + area, 0);

function withCover(level: Level, ids: ReadonlySet<string>): Level {
  return {
    ...level,
    openings: level.openings.map((one) => (ids.has(one.id) ? { ...one, shade: 'covered' as const } : one)),
  };
}

/** Names an opening by its compass direction from the middle of the level. */
function nameOf({ site }: Plan, { level, rooms }: LevelModel, id: string): string {
  const to = openingMiddle(level, id);
  const { minX, minY, maxX, maxY } = ringExtent(rooms.flatMap(({ floorRings }) => floorRings.flat()));
  const from: XY = [(minX + maxX) / 2, (minY + maxY) / 2];
  return subjectName(level, id, to && { from, to, north: site });
}
