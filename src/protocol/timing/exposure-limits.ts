import type { Plan } from '../../../geometry/plan/model.ts';
import type { Kit } from '../../../geometry/plan/test-record.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import type { Ms } from './clock.ts';
import { HOUR } from './clock.ts';
import { LEAST_EXPOSURE, LEAST_LONG_EXPOSURE, MOST_EXPOSURE, type TermLimit } from './limits.ts';

/** Sources for why a long-term test needs no closed-building conditions. */
export const LONG_TERM_SOURCES: readonly Source[] = LEAST_LONG_EXPOSURE.sources;

export const isLongTerm = ({ protocol }: Pick<Plan, 'protocol'>): boolean => profileOf(protocol).term === 'long';

/** Returns the minimum exposure of the plan's profile, regardless of the kit. */
export const leastOfTerm = (plan: Pick<Plan, 'protocol'>): TermLimit =>
  isLongTerm(plan) ? LEAST_LONG_EXPOSURE : LEAST_EXPOSURE;

/** Returns the maximum exposure of the plan's profile, ms, regardless of the kit: infinite for a long-term test. */
export const mostOfTerm = (plan: Pick<Plan, 'protocol'>): Ms =>
  isLongTerm(plan) ? Number.POSITIVE_INFINITY : MOST_EXPOSURE.duration;

interface Answered {
  readonly kit: Pick<Kit, 'hoursAnswered' | 'labDaysAnswered'>;
}

/** Returns whether the exposure hours of the kit were entered: the initial values of a new plan are not limits. */
export const hoursAreKnown = ({ kit }: Answered): boolean => kit.hoursAnswered !== false;

/** Returns whether the days in which the laboratory must have the kit were entered. */
export const labDaysAreKnown = ({ kit }: Answered): boolean => kit.labDaysAnswered ?? kit.hoursAnswered !== false;

/** Returns the exposure hours that both the kit and the profile allow. */
export function kitWindow(plan: Pick<Plan, 'kit' | 'protocol'>): Pick<Kit, 'minimumHours' | 'maximumHours'> {
  const { minimumHours, maximumHours } = plan.kit;
  return {
    minimumHours: Math.max(minimumHours, leastOfTerm(plan).duration / HOUR),
    maximumHours: Math.min(maximumHours, mostOfTerm(plan) / HOUR),
  };
}

/** The time in which the detectors of a kit may be picked up, both ends included. */
export interface PickUpWindow {
  readonly from: Ms;
  readonly to: Ms;
}

/** Returns the first pick-up that can be valid; while the hours of the kit are not known, that of the profile. */
export function firstPickUp(plan: Pick<Plan, 'kit' | 'protocol'>, start: Ms): Ms {
  return hoursAreKnown(plan) ? pickUpWindow(start, kitWindow(plan)).from : start + leastOfTerm(plan).duration;
}

/** Returns the shortest test with a kit, ms: at least `LEAST_EXPOSURE`. */
export const leastExposure = ({ minimumHours }: Pick<Kit, 'minimumHours'>): Ms =>
  Math.max(minimumHours * HOUR, LEAST_EXPOSURE.duration);

/** Returns the pick-up window. For a kit whose maximum is below the minimum exposure, it is the last instant only: no pick-up is valid. */
export function pickUpWindow(start: Ms, kit: Pick<Kit, 'minimumHours' | 'maximumHours'>): PickUpWindow {
  const to = start + kit.maximumHours * HOUR;
  return { from: Math.min(start + leastExposure(kit), to), to };
}
