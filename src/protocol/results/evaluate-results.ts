import type { Plan } from '../../../geometry/plan/model.ts';
import type { Reading } from '../../../geometry/plan/test-record.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import { issueText, stateForDetectors, type TestState } from '../validity/validity.ts';
import { isAtLeast, US_ACTION_LEVEL } from './action-levels.ts';
import { type EarlierResults, earlierResultsAt, mayLower } from './earlier-results.ts';
import { atLeast, compare, type Exact, exact, meanOf, rounded, times } from './exact.ts';
import type { LocationReport, PairStatus } from './location-report.ts';
import { type LocationResults, resultsByLocation } from './locations.ts';
import { exceedsLongTermLevel, nextStepForMean } from './next-step-for-mean.ts';
import { NEXT_STEPS, type NextStep, type NextStepId } from './next-steps.ts';
import { type Precision, precisionOf, relativePercentDifference } from './precision.ts';
import { inPicocuries } from './radon.ts';

/**
 * Returns an evaluation of each location of a plan that has a result.
 * @param state validity of the whole test: results of an invalid location are shown, and no next step is derived from their value
 */
export function evaluateResults(plan: Plan, state: TestState): readonly LocationReport[] {
  return resultsByLocation(plan).map((set) => evaluateLocation(plan, set, state));
}

function evaluateLocation(plan: Plan, set: LocationResults, whole: TestState): LocationReport {
  const state = stateForDetectors(whole, set.detectors);
  const values = set.recorded.map(inPicocuries);
  const undecided = set.duplicated.length > 0;
  const mean = undecided ? null : meanOf(values);
  const pair = undecided ? null : extremes(set.readings);
  const precision = pair && mean && pairPrecision(pair, mean);
  const twice = pair ? straddlesActionLevel(plan, pair) : 'no';
  const earlier = earlierResultsAt(plan, set);
  const pairStatus: PairStatus = twice !== 'no' ? 'straddles-by-two' : (precision?.status ?? 'single');
  // A mean that must not be used is not averaged with an earlier result.
  const complete = set.detectors.length === set.readings.length && pairStatus !== 'straddles-by-two';
  const withEarlier = mean && complete ? averageWithEarlier(plan, earlier, mean) : null;
  const partial = { set, values, mean, pairStatus, precision, earlier, withEarlier };
  return {
    ...partial,
    meanRounded: mean && rounded(mean, 1),
    rpd: pair && relativePercentDifference(pair.low.value, pair.high.value),
    straddleDisputed: twice === 'exactly',
    atMost: set.readings.some(({ belowLimit }) => belowLimit),
    state,
    next: nextStep(plan, partial, state, whole),
  };
}

interface Result {
  readonly value: Exact;
  readonly below: boolean;
}
interface Pair {
  readonly low: Result;
  readonly high: Result;
}

/** Returns the lowest and highest of two or more results; null for one. Of equal values, one below the detection limit is the lower. */
function extremes(readings: readonly Reading[]): Pair | null {
  if (readings.length < 2) return null;
  const sorted = readings
    .map((reading): Result => ({ value: inPicocuries(reading), below: reading.belowLimit === true }))
    .sort((a, b) => compare(a.value, b.value) || Number(b.below) - Number(a.below));
  return { low: sorted[0] as Result, high: sorted.at(-1) as Result };
}

/**
 * Returns the precision of the two results that are farthest apart, in the band of the mean of all. Two results below the detection limit
 * are in control: our reading, for a home, of ANSI/AARST MS-QA-2019, Table 7.1, which is for duplicates in a laboratory; N.J.A.C.
 * 7:28-27.10(c)1 applies to results above the detection limit only.
 */
function pairPrecision({ low, high }: Pair, mean: Exact): Precision {
  const precision = precisionOf(low.value, high.value, mean);
  return low.below && high.below ? { ...precision, status: 'in-control', otherReading: null } : precision;
}

/**
 * Whether one result is at or above the action level, the other below, and the higher at least twice the lower. The level is compared
 * with results as reported, at one decimal; the factor is exact. A result below the detection limit may be zero.
 */
function straddlesActionLevel({ protocol }: Plan, { low, high }: Pair): 'no' | 'exactly' | 'more' {
  const long = profileOf(protocol).term === 'long';
  const reported = (value: Exact) =>
    long ? exceedsLongTermLevel(value) : isAtLeast(rounded(value, 1), US_ACTION_LEVEL);
  if (reported(low.value) || !reported(high.value)) return 'no';
  const double = low.below ? exact(0n) : times(low.value, exact(2n));
  if (!atLeast(high.value, double)) return 'no';
  return compare(high.value, double) === 0 ? 'exactly' : 'more';
}

/**
 * Returns the average of an initial short-term test and this one, at one decimal: ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(b). Null
 * after mitigation, because the earlier test measured the home without the system, and if the earlier result would lower this one but is
 * too old or has no date.
 */
function averageWithEarlier(plan: Plan, { shortTerm }: EarlierResults, mean: Exact): Exact | null {
  if (!shortTerm || plan.site.purpose === 'after-mitigation') return null;
  const before = inPicocuries(shortTerm);
  if (compare(before, mean) < 0 && !mayLower(plan, shortTerm)) return null;
  return rounded(meanOf([before, mean]), 1);
}

type Evaluated = Pick<LocationReport, 'set' | 'mean' | 'pairStatus' | 'earlier' | 'withEarlier'>;

/** Returns the next step. For a location that is not valid it names the issues, and nothing in it is derived from the value. */
function nextStep(plan: Plan, evaluated: Evaluated, { validity, issues }: TestState, whole: TestState): NextStep {
  const { mean } = evaluated;
  if (validity === 'holds' && mean && isComplete(evaluated))
    return withholdNoAction(NEXT_STEPS[nextStepForMean(plan, evaluated, mean)], whole);
  const step = NEXT_STEPS[validity === 'not-evaluated' ? validity : openStep(evaluated)];
  return { ...step, text: [step.text, ...issues.map(issueText)].join(' ') };
}

/** Replaces a step that calls for no action while the test as a whole is not valid. */
function withholdNoAction(step: NextStep, { validity, issues }: TestState): NextStep {
  if (validity === 'holds' || step.noActionPhrases.length === 0) return step;
  const wait = NEXT_STEPS['wait-for-the-rest'];
  return { ...wait, text: [wait.text, ...issues.map(issueText)].join(' ') };
}

const isComplete = ({ set }: Evaluated): boolean => set.detectors.length <= set.readings.length;

/** Returns the step for results that are missing or ambiguous. */
function openStep(evaluated: Evaluated): NextStepId {
  if (!evaluated.mean) return 'undecided';
  return isComplete(evaluated) ? 'unknown' : 'wait-for-results';
}
