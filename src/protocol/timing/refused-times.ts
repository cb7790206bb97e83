import type { Visit } from '../../../geometry/plan/test-record.ts';
import { type Ms, msOf } from './clock.ts';
import { formatInstantNear } from './format-time.ts';

/** Returns why an instant is not accepted, in a sentence or two; empty if it is. */
export type TimeRefusal = (at: Ms, now: Ms) => string;

/** Added because a pick-up entered in advance is usually a planned one. */
const WHERE_A_PLAN_GOES = 'A planned pick-up is entered under Time, in "Pick-up planned".';

/** Refuses a future time, for an event that is recorded after it has happened. `zone` is that of the site. */
export const notAhead =
  (zone: string): TimeRefusal =>
  (at, now) =>
    at > now
      ? `${formatInstantNear(at, zone, now)} has not come yet: by this device it is ${formatInstantNear(now, zone, now)}. Record it once it has happened.`
      : '';

/** The same for events at and after the pick-up: the text adds where a planned pick-up is entered. */
export const pickUpNotAhead =
  (zone: string): TimeRefusal =>
  (at, now) => {
    const refusal = notAhead(zone)(at, now);
    return refusal && `${refusal} ${WHERE_A_PLAN_GOES}`;
  };

/** Refuses a placement that is not before the recorded pick-up. It may be in the future: it is planned then. */
export const placedRefusal =
  ({ end }: Visit, zone: string): TimeRefusal =>
  (at, now) => {
    const pickUp = msOf(end);
    if (pickUp === null || at < pickUp) return '';
    return `The pick-up is recorded at ${formatInstantNear(pickUp, zone, now)}: the detectors were placed before that. Review both times.`;
  };

/** Refuses a pick-up in the future or not after the placement. */
export const pickedUpRefusal =
  ({ start }: Visit, zone: string): TimeRefusal =>
  (at, now) => {
    const ahead = pickUpNotAhead(zone)(at, now);
    const placed = msOf(start);
    if (ahead || placed === null || at > placed) return ahead;
    return `The detectors are recorded as placed at ${formatInstantNear(placed, zone, now)}: a pick-up is later than that. Review both times.`;
  };
