import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import { sunPosition } from '../../geometry/sun/position.ts';
import type { Heights } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { type SunTimes, sunTimes } from '../../geometry/sun/times.ts';
import { HOUR, type Ms } from '../protocol/timing/clock.ts';

/** Time between two moments of the day that is played, ms. */
const EVERY = 10 * 60_000;

/** The days that are played: those of the test, or assumed ones where none are planned. */
export interface SunDays {
  readonly times: SunTimes;
  /** Whether they are assumed: a test that starts now and lasts as long as the kit allows. */
  readonly isAssumed: boolean;
  /** The moments at which the sun is above the horizon of the site; empty in a polar night. */
  readonly moments: readonly Ms[];
}

/** Returns the days to play; null while the place of the house or north is missing. */
export function sunDays(plan: Plan, now: Ms): SunDays | null {
  const planned = sunTimes(plan);
  const end = now + plan.kit.maximumHours * HOUR;
  const text = (at: Ms) => new Date(at).toISOString();
  const times = planned ?? sunTimes({ ...plan, visit: { ...plan.visit, start: text(now), end: text(end) } });
  if (!times || times.end < times.start) return null;
  const { latitude, longitude, horizon } = times;
  const moments: Ms[] = [];
  for (let at = Math.ceil(times.start / EVERY) * EVERY; at <= times.end; at += EVERY)
    if (sunPosition(at, latitude, longitude).altitude >= horizon) moments.push(at);
  return { times, isAssumed: !planned, moments };
}

/** Returns the floor in the sun at one moment; empty if none is, or if it cannot be computed. */
export const sunAtMoment = (model: LevelModel, times: SunTimes, heights: Heights, at: Ms): readonly Ring[] =>
  sunOfDays(model, { ...times, start: at, end: at }, heights);

/** Returns the floor in the sun on days that need not be planned; empty if none is, or if it cannot be computed. */
export function sunOfDays(model: LevelModel, times: SunTimes, heights: Heights): readonly Ring[] {
  const swept = sweptArea(model, times, heights);
  return swept.state === 'known' ? swept.areas.flatMap(({ rings }) => rings) : [];
}
