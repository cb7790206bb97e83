import type { Plan } from '../../../geometry/plan/model.ts';
import { conditionsReport } from '../conditions/report.ts';
import { TIMING_NAME, timingChecks } from './checks.ts';
import { isLaboratoryDoubt, STANDS_WITH, testStanding } from './report.ts';

/** Why a test does not hold, or what is missing before it can be told, and where in the job that is mended. */
export interface StandingReason {
  readonly stage: 'time' | 'house';
  readonly says: string;
}

/** The press that leads there. */
export const STAGE_PRESS = { time: 'Look at the times', house: 'Look at the house' } as const;

/** Of a test that is not evaluated what broke it; of one that is not known what is missing; of one that holds nothing. */
export function standingReasons(plan: Plan): readonly StandingReason[] {
  const standing = testStanding(plan);
  if (standing === 'holds') return [];
  const bad = standing === 'not-evaluated' ? 'blocked' : 'unknown';
  const times = timingChecks(plan)
    .filter((check) =>
      STANDS_WITH.includes(check.rule) ? check.verdict === bad : isLaboratoryDoubt(check) && standing === 'unknown',
    )
    .map(({ rule, detail }): StandingReason => ({ stage: 'time', says: `${TIMING_NAME[rule]}: ${detail}` }));
  const { whole, says } = conditionsReport(plan);
  const house: readonly StandingReason[] = whole === standing ? [{ stage: 'house', says: `The house: ${says}` }] : [];
  return [...times, ...house];
}

/** Whether something is known that speaks against a test: a limit of time that is not kept, or a break that is more than noted. */
export function isKnownWrong(plan: Plan): boolean {
  const broken = conditionsReport(plan).rows.some(({ means }) => means === 'not-evaluated' || means === 'look-again');
  return broken || timingChecks(plan).some(({ verdict }) => verdict === 'blocked');
}
