import type { Plan } from '../../../geometry/plan/model.ts';
import type { Kit } from '../../../geometry/plan/test-record.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import type { Source } from '../../../geometry/rules/types.ts';
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
