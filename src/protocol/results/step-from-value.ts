import type { Plan } from '../../../geometry/plan/model.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import { hasMitigation } from '../timing/mitigation.ts';
import { isAtLeast, US_ACTION_LEVEL, US_CONSIDER_LEVEL } from './action-levels.ts';
import type { EarlierHere } from './earlier.ts';
import { type Exact, rounded } from './exact.ts';
import { longTermStep } from './long-term.ts';
import { type NextStepId, SECOND_TEST_FROM } from './next-steps.ts';
import { inPicocuries } from './radon.ts';
import type { SetReport } from './types.ts';

type Valued = Pick<SetReport, 'agreement' | 'earlier' | 'withEarlier'>;

/** What comes after a mean, pCi/L, of a location that holds. */
export function stepFromValue(plan: Plan, valued: Valued, mean: Exact): NextStepId {
  const { agreement, withEarlier, earlier } = valued;
  if (agreement === 'straddles-by-two') return 'retest-straddles';
  if (profileOf(plan.protocol).term === 'long') return spread(longTermStep(mean), agreement);
  const own = rounded(mean, 1);
  const steps = { 'own-household': householdStep, 'property-transfer': saleStep, 'after-mitigation': mitigatedStep };
  const step = steps[plan.site.purpose](own, withEarlier, earlier);
  if (isHigh(withEarlier ?? own)) return step;
  // ANSI/AARST MAH-2019, 8.5.9.2: a home with a system every 2 years, not every 5.
  return spread(step === 'retest-later' && hasMitigation(plan) ? 'retest-mitigated' : step, agreement);
}

/** Results too far apart are found out about first, unless they ask for work in any case. */
const spread = (step: NextStepId, agreement: SetReport['agreement']): NextStepId =>
  agreement === 'out-of-control' && !ASKS_FOR_WORK.has(step) ? 'retest-spread' : step;

const ASKS_FOR_WORK: ReadonlySet<NextStepId> = new Set([
  'fix-sale-either',
  'fix-long-term',
  'reduce-long',
  'reduce-soon-long',
]);

const isHigh = (result: Exact): boolean => isAtLeast(result, US_ACTION_LEVEL);
const isWorthFixing = (result: Exact): boolean => isAtLeast(result, US_CONSIDER_LEVEL);
const wasHighForLong = ({ longTerm }: EarlierHere): boolean =>
  longTerm !== null && isHigh(rounded(inPicocuries(longTerm), 1));

/** In a sale the test itself decides, and the average with an earlier one where that is the stricter. */
function saleStep(own: Exact, withEarlier: Exact | null, earlier: EarlierHere): NextStepId {
  if (isHigh(own)) return withEarlier && !isHigh(withEarlier) ? 'fix-sale-either' : 'fix-sale';
  if (withEarlier && isHigh(withEarlier)) return 'fix-sale-either';
  if (wasHighForLong(earlier)) return 'fix-long-term';
  return isWorthFixing(own) || (withEarlier && isWorthFixing(withEarlier))
    ? 'consider-fixing-sale'
    : 'retest-later-sale';
}

const mitigatedStep = (own: Exact): NextStepId => (isHigh(own) ? 'call-mitigator' : 'retest-mitigated');

/** In one's own home: a long-term test decides, then the average of two short-term ones, then the first one by itself. */
function householdStep(own: Exact, withEarlier: Exact | null, earlier: EarlierHere): NextStepId {
  if (wasHighForLong(earlier)) return 'fix-long-term';
  if (withEarlier) return isHigh(withEarlier) ? 'fix' : 'below-after-two';
  return firstStep(own);
}

/** After a first short-term test of one's own home. */
function firstStep(result: Exact): NextStepId {
  if (isAtLeast(result, SECOND_TEST_FROM)) return 'second-test-now';
  if (isHigh(result)) return 'follow-up';
  return isWorthFixing(result) ? 'consider-fixing' : 'retest-later';
}
