import type { EarlierResult, Plan } from '../../../geometry/plan/model.ts';
import { isAtLeast, US_ACTION_LEVEL, US_CONSIDER_LEVEL } from './action-levels.ts';
import { atLeast, compare, type Exact, exact, meanOf, rounded, times } from './exact.ts';
import { NEXT_STEPS, type NextStep, type NextStepId, SECOND_TEST_FROM } from './next-steps.ts';
import { type Agreement, type Precision, precisionOf, relativePercentDifference } from './precision.ts';
import { inPicocuries } from './radon.ts';
import { type ReadingSet, readingSets } from './sets.ts';

export type SetAgreement = Agreement | 'straddles-by-two' | 'single';

/** What the results of one location come to. Concentrations in pCi/L, exact. */
export interface SetReport {
  readonly set: ReadingSet;
  readonly values: readonly Exact[];
  /** null where no one figure may be given. */
  readonly mean: Exact | null;
  /** The mean at one decimal, a half up: what every limit is held against. */
  readonly meanRounded: Exact | null;
  /** Percent; null for a single result, or where both are zero. */
  readonly rpd: Exact | null;
  readonly agreement: SetAgreement;
  /** How the pair keeps its limits; null for a single result. */
  readonly precision: Precision | null;
  /** At exactly twice the lower: the other published reading uses the average. */
  readonly straddleDisputed: boolean;
  readonly next: NextStep;
  /** With the earlier result of the same location, at one decimal; null where there is none. */
  readonly withEarlier: Exact | null;
}

/** Whether the times of the test, and the conditions in the house, let its results be used. */
export type TestStanding = 'holds' | 'not-evaluated' | 'unknown';

/**
 * Judges the results of a plan, a location at a time.
 * @param standing from the timing of the test: results of a test that does not hold are shown and not evaluated
 */
export function judgeReadings(plan: Plan, standing: TestStanding): readonly SetReport[] {
  return readingSets(plan).map((set) => judgeSet(plan, set, standing));
}

function judgeSet(plan: Plan, set: ReadingSet, standing: TestStanding): SetReport {
  const values = set.readings.map(inPicocuries);
  const undecided = set.twice.length > 0;
  const mean = undecided ? null : meanOf(values);
  const pair = undecided ? null : widest(values);
  const precision = pair && precisionOf(...pair);
  const twice = pair ? straddle(...pair) : 'no';
  const withEarlier = mean && set.level === plan.levels[0] ? averagedWith(plan.earlier ?? [], mean) : null;
  const agreement: SetAgreement = twice !== 'no' ? 'straddles-by-two' : (precision?.agreement ?? 'single');
  const partial = { set, values, mean, agreement, precision, withEarlier };
  return {
    ...partial,
    meanRounded: mean && rounded(mean, 1),
    rpd: pair && relativePercentDifference(...pair),
    straddleDisputed: twice === 'exactly',
    next: NEXT_STEPS[nextStepId(plan, partial, standing)],
  };
}

/** Of two or more results the lowest and the highest; null for one. */
function widest(values: readonly Exact[]): readonly [Exact, Exact] | null {
  if (values.length < 2) return null;
  const sorted = [...values].sort(compare);
  return [sorted[0] as Exact, sorted.at(-1) as Exact];
}

/**
 * One result at the action level or above, the other below, and the higher at least twice the lower. The level is held against
 * results at one decimal, as they are reported; the factor is exact.
 */
function straddle(low: Exact, high: Exact): 'no' | 'exactly' | 'more' {
  const reported = (value: Exact) => isAtLeast(rounded(value, 1), US_ACTION_LEVEL);
  if (reported(low) || !reported(high)) return 'no';
  const double = times(low, exact(2n));
  if (!atLeast(high, double)) return 'no';
  return compare(high, double) === 0 ? 'exactly' : 'more';
}

/** The average of an initial short-term test and this one, at one decimal: ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(b). */
function averagedWith(earlier: readonly EarlierResult[], mean: Exact): Exact | null {
  const last = earlier.filter(({ term }) => term === 'short-term').at(-1);
  return last ? rounded(meanOf([inPicocuries(last), mean]), 1) : null;
}

type Judged = Pick<SetReport, 'set' | 'mean' | 'agreement' | 'precision' | 'withEarlier'>;

function nextStepId(plan: Plan, { set, mean, agreement, withEarlier }: Judged, standing: TestStanding): NextStepId {
  if (standing === 'not-evaluated') return 'not-evaluated';
  if (!mean) return 'undecided';
  if (set.detectors.length > set.readings.length) return 'wait-for-results';
  if (agreement === 'straddles-by-two') return 'retest-straddles';
  const deciding = withEarlier ?? rounded(mean, 1);
  const high = isAtLeast(deciding, US_ACTION_LEVEL);
  if (agreement === 'out-of-control' && !high) return 'retest-spread';
  switch (plan.site.purpose) {
    case 'property-transfer':
      return high ? 'fix-sale' : 'retest-later-sale';
    case 'after-mitigation':
      return high ? 'call-mitigator' : 'retest-mitigated';
    case 'own-household':
      if (withEarlier) return high ? 'fix' : 'below-after-two';
      return householdStep(deciding);
  }
}

/** After a first short-term test of one's own home. */
function householdStep(result: Exact): NextStepId {
  if (isAtLeast(result, SECOND_TEST_FROM)) return 'second-test-now';
  if (isAtLeast(result, US_ACTION_LEVEL)) return 'follow-up';
  return isAtLeast(result, US_CONSIDER_LEVEL) ? 'consider-fixing' : 'retest-later';
}
