import type { Plan } from '../../../geometry/plan/model.ts';
import type { Kit } from '../../../geometry/plan/test-record.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import type { Ms } from './clock.ts';
import { HOUR } from './clock.ts';
import { LEAST_EXPOSURE, LEAST_LONG_EXPOSURE, type TermLimit } from './limits.ts';

/** Why a long-term test needs no closed house. */
export const LONG_TERM_SOURCES: readonly Source[] = LEAST_LONG_EXPOSURE.sources;

export const isLongTerm = ({ protocol }: Pick<Plan, 'protocol'>): boolean => profileOf(protocol).term === 'long';

/** The shortest test that the term of the plan's profile accepts, whatever the kit allows. */
export const leastOfTerm = (plan: Pick<Plan, 'protocol'>): TermLimit =>
  isLongTerm(plan) ? LEAST_LONG_EXPOSURE : LEAST_EXPOSURE;

/** The window of the kit within what the term of the profile accepts. */
export function kitWindow(plan: Pick<Plan, 'kit' | 'protocol'>): Pick<Kit, 'minimumHours' | 'maximumHours'> {
  const { minimumHours, maximumHours } = plan.kit;
  return { minimumHours: Math.max(minimumHours, leastOfTerm(plan).duration / HOUR), maximumHours };
}

/** From when to when the detectors of a kit may be fetched; both ends belong to it. */
export interface PickUpWindow {
  readonly from: Ms;
  readonly to: Ms;
}

/** The shortest test with a kit: no kit makes one of less than `LEAST_EXPOSURE`. */
export const leastExposure = ({ minimumHours }: Pick<Kit, 'minimumHours'>): Ms =>
  Math.max(minimumHours * HOUR, LEAST_EXPOSURE.duration);

/** Of a kit that must be fetched before `LEAST_EXPOSURE` it is its last moment alone: no pick-up of it is right. */
export function pickUpWindow(start: Ms, kit: Pick<Kit, 'minimumHours' | 'maximumHours'>): PickUpWindow {
  const to = start + kit.maximumHours * HOUR;
  return { from: Math.min(start + leastExposure(kit), to), to };
}
