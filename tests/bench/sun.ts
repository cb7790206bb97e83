import { buildLevel } from '../../geometry/level/build-level.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { type SunTimes, sunTimes } from '../../geometry/sun/times.ts';
import { onlyLevel, PROBE } from './plans.ts';
import { SUN_FLOOR, SUN_PANES, sunHouse } from './sun-house.ts';
import { unionOfMinutes } from './sun-minutes.ts';
import { type Effort, measure, type Samples } from './timing.ts';

const hoursOf = ({ brief = false }: Effort): number => (brief ? 24 : 96);

/** The floor that direct sun crosses through eight windows; rooms are ready, nothing else is cached. */
export function sunSwept(_: unknown, effort: Effort): Samples {
  return measure(effort, () => {
    const plan = sunHouse(hoursOf(effort));
    const model = buildLevel(onlyLevel(plan));
    const times = sunTimes(plan) as SunTimes;
    return () => sweptArea(model, times, PROBE);
  });
}

/** The same floor computed minute by minute. */
export function sunByMinutes(_: unknown, effort: Effort): Samples {
  const times = sunTimes(sunHouse(hoursOf(effort))) as SunTimes;
  return measure(effort, () => () => unionOfMinutes(SUN_PANES, SUN_FLOOR, times, PROBE));
}
