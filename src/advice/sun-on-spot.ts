import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan, XY } from '../../geometry/plan/model.ts';
import { sunAtSpot } from '../../geometry/sun/spot-sun.ts';
import { type Heights, sunFloor } from '../../geometry/sun/sun-floor.ts';
import { sunTimes } from '../../geometry/sun/times.ts';
import { NO_CLOUDS, sunTimesInWords } from './sun-words.ts';

/** Returns a line with the times of direct sun on a spot; empty if there is none, or if it is not computed. */
export function sunOnSpot(plan: Plan, model: LevelModel, heights: Heights, spot: XY): readonly string[] {
  const times = sunTimes(plan);
  const swept = times && sunFloor(model, times, heights);
  if (!times || swept?.state !== 'known') return [];
  const words = sunTimesInWords(sunAtSpot(model, times, heights, swept.areas, spot), times, plan.site.timeZone);
  return words ? [`In the sun from ${words}. ${NO_CLOUDS}`] : [];
}
