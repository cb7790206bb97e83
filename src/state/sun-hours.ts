import type { LevelModel } from '../../geometry/level/types.ts';
import { type Spot, type SunSpan, sunHoursSteps } from '../../geometry/sun/sun-hours.ts';
import type { SunTimes } from '../../geometry/sun/times.ts';
import { atLeisure } from './at-leisure.ts';

/** Resolves to when direct sun through an opening comes near to a spot; null if it is no longer wanted. */
export const sunHours = (
  model: LevelModel,
  times: SunTimes,
  opening: string,
  spot: Spot,
  isWanted: () => boolean,
): Promise<readonly SunSpan[] | null> => atLeisure(sunHoursSteps(model, times, opening, spot), isWanted);
