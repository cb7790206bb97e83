import type { Plan } from '../../../geometry/plan/model.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import { hasMitigation } from '../timing/mitigation.ts';
import {
  ACTION_LEVELS,
  type ActionLevel,
  isAtLeast,
  reaches,
  US_ACTION_LEVEL,
  US_CONSIDER_LEVEL,
} from './action-levels.ts';
import type { EarlierResults } from './earlier-results.ts';
import { compare, type Exact, rounded } from './exact.ts';
import type { LocationReport } from './location-report.ts';
import { type NextStepId, SECOND_TEST_FROM } from './next-steps.ts';
import { inPicocuries } from './radon.ts';

type EvaluatedMean = Pick<LocationReport, 'pairStatus' | 'earlier' | 'withEarlier'>;

/** Returns the next step for the mean, pCi/L, of a valid location. */
export function nextStepForMean(plan: Plan, evaluated: EvaluatedMean, mean: Exact): NextStepId {
  const { pairStatus, withEarlier, earlier } = evaluated;
  const isLong = profileOf(plan.protocol).term === 'long';
  if (pairStatus === 'straddles-by-two') return isLong ? 'retest-straddles-long' : 'retest-straddles';
  if (isLong) return findCauseFirst(longTermStep(mean), pairStatus);
  const own = rounded(mean, 1);
  const steps = { 'own-household': householdStep, 'property-transfer': saleStep, 'after-mitigation': mitigatedStep };
  const step = steps[plan.site.purpose](own, withEarlier, earlier);
  if (isHigh(withEarlier ?? own)) return step;
  // ANSI/AARST MAH-2019, 8.5.9.2: a home with a system every 2 years, not every 5.
  return findCauseFirst(step === 'retest-later' && hasMitigation(plan) ? 'retest-mitigated' : step, pairStatus);
}

/** For a pair that is out of control the cause is found first, unless the step calls for mitigation anyway. */
const findCauseFirst = (step: NextStepId, status: LocationReport['pairStatus']): NextStepId =>
  status === 'out-of-control' && !ASKS_FOR_WORK.has(step) ? 'retest-spread' : step;

const ASKS_FOR_WORK: ReadonlySet<NextStepId> = new Set([
  'fix-sale-either',
  'fix-long-term',
  'reduce-long',
  'reduce-soon-long',
]);

const isHigh = (result: Exact): boolean => isAtLeast(result, US_ACTION_LEVEL);
const isWorthFixing = (result: Exact): boolean => isAtLeast(result, US_CONSIDER_LEVEL);
const wasHighForLong = ({ longTerm }: EarlierResults): boolean =>
  longTerm !== null && isHigh(rounded(inPicocuries(longTerm), 1));

/** In a property transfer the test itself decides, or the average with an earlier test if that is stricter. */
function saleStep(own: Exact, withEarlier: Exact | null, earlier: EarlierResults): NextStepId {
  if (isHigh(own)) return withEarlier && !isHigh(withEarlier) ? 'fix-sale-either' : 'fix-sale';
  if (withEarlier && isHigh(withEarlier)) return 'fix-sale-either';
  if (wasHighForLong(earlier)) return 'fix-long-term';
  return isWorthFixing(own) || (withEarlier && isWorthFixing(withEarlier))
    ? 'consider-fixing-sale'
    : 'retest-later-sale';
}

const mitigatedStep = (own: Exact): NextStepId => (isHigh(own) ? 'call-mitigator' : 'retest-mitigated');

/** In a household a long-term test decides, else the average of two short-term tests, else the first test alone. */
function householdStep(own: Exact, withEarlier: Exact | null, earlier: EarlierResults): NextStepId {
  if (wasHighForLong(earlier)) return 'fix-long-term';
  if (withEarlier) return isHigh(withEarlier) ? 'fix' : 'below-after-two';
  return firstStep(own);
}

/** The step after a first short-term test of a household. */
function firstStep(result: Exact): NextStepId {
  if (isAtLeast(result, SECOND_TEST_FROM)) return 'second-test-now';
  if (isHigh(result)) return 'follow-up';
  return isWorthFixing(result) ? 'consider-fixing' : 'retest-later';
}

/** Level above which Health Canada recommends reduction within a year (from memory): 600 Bq/m3, in pCi/L. */
const REDUCE_SOON_LEVEL = inPicocuries({ value: 600, unit: 'Bq/m3' });

/** The level of a long-term profile: the guideline of Canada, 200 Bq/m3. */
const LONG_TERM_LEVEL = ACTION_LEVELS.find(({ id }) => id === 'canada') as ActionLevel;

/** Returns whether a mean, pCi/L, exceeds the long-term level; one at the level does not. Compared exactly, not rounded. */
export const exceedsLongTermLevel = (mean: Exact): boolean => reaches(mean, LONG_TERM_LEVEL);

/** Returns the next step for a long-term mean, pCi/L. */
function longTermStep(mean: Exact): NextStepId {
  if (compare(mean, REDUCE_SOON_LEVEL) > 0) return 'reduce-soon-long';
  return exceedsLongTermLevel(mean) ? 'reduce-long' : 'below-long';
}
