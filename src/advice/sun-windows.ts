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
  /** Allowed area that keeping it covered gives back, mm². */
  readonly back: number;
}

/** The allowed area of a level and the openings whose sun takes from it, what takes most first. */
export interface SunTake {
  /** In mm². */
  readonly allowed: number;
  readonly windows: readonly SunWindow[];
  /** What keeping all of them covered gives back, mm². */
  readonly all: number;
}

/**
 * Returns what closing a curtain would give back, for each opening that lets direct sun in; null where that is not worked out. With a
 * pause after each, for a page that must not stop meanwhile.
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
    // The light of the other openings is the same.
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

/** By the compass, seen from the middle of the level. */
function nameOf({ site }: Plan, { level, rooms }: LevelModel, id: string): string {
  const to = openingMiddle(level, id);
  const { minX, minY, maxX, maxY } = ringExtent(rooms.flatMap(({ floorRings }) => floorRings.flat()));
  const from: XY = [(minX + maxX) / 2, (minY + maxY) / 2];
  return subjectName(level, id, to && { from, to, north: site });
}
