import type { Plan } from '../../../geometry/plan/model.ts';
import type { Reading } from '../../../geometry/plan/test-record.ts';
import { profileOf } from '../../../geometry/rules/profiles.ts';
import { issueText, stateForDetectors, type TestState } from '../validity/validity.ts';
import { isAtLeast, US_ACTION_LEVEL } from './action-levels.ts';
import { type EarlierResults, earlierResultsAt } from './earlier-results.ts';
import { atLeast, compare, type Exact, exact, meanOf, rounded, times } from './exact.ts';
import type { LocationReport, PairStatus } from './location-report.ts';
import { type LocationResults, resultsByLocation } from './locations.ts';
import { exceedsLongTermLevel, nextStepForMean } from './next-step-for-mean.ts';
import { NEXT_STEPS, type NextStep, type NextStepId } from './next-steps.ts';
import { type Precision, precisionOf, relativePercentDifference } from './precision.ts';
import { inPicocuries } from './radon.ts';

/**
 * Judges the results of a plan, a location at a time.
 * @param state of the whole test: results of a location that does not hold are shown, and no step is named from their value
 */
export function evaluateResults(plan: Plan, state: TestState): readonly LocationReport[] {
  return resultsByLocation(plan).map((set) => evaluateLocation(plan, set, state));
}

function evaluateLocation(plan: Plan, set: LocationResults, whole: TestState): LocationReport {
  const state = stateForDetectors(whole, set.detectors);
  const values = set.readings.map(inPicocuries);
  const undecided = set.duplicated.length > 0;
  const mean = undecided ? null : meanOf(values);
  const pair = undecided ? null : extremes(set.readings);
  const precision = pair && mean && pairPrecision(pair, mean);
  const twice = pair ? straddlesActionLevel(plan, pair) : 'no';
  const earlier = earlierResultsAt(plan, set);
  const pairStatus: PairStatus = twice !== 'no' ? 'straddles-by-two' : (precision?.status ?? 'single');
  // What must not be used is averaged with nothing either.
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

/** Of two or more results the lowest and the highest; null for one. Of two equal ones the lower is the one below the limit. */
function extremes(readings: readonly Reading[]): Pair | null {
  if (readings.length < 2) return null;
  const sorted = readings
    .map((reading): Result => ({ value: inPicocuries(reading), below: reading.belowLimit === true }))
    .sort((a, b) => compare(a.value, b.value) || Number(b.below) - Number(a.below));
  return { low: sorted[0] as Result, high: sorted.at(-1) as Result };
}

/** Of more than two the two that are farthest apart, in the band of the mean of all. Both below the limit of the laboratory agree, whatever the limits: ANSI/AARST MS-QA-2019, Table 7.1, which is for duplicates in a laboratory, as we read it for a home; N.J.A.C. 7:28-27.10(c)1 holds only results above the limit against its own. */
function pairPrecision({ low, high }: Pair, mean: Exact): Precision {
  const precision = precisionOf(low.value, high.value, mean);
  return low.below && high.below ? { ...precision, status: 'in-control', otherReading: null } : precision;
}

/**
 * One result at the action level or above, the other below, and the higher at least twice the lower. The level is held against
 * results at one decimal, as they are reported; the factor is exact. Below the limit of the laboratory it may be nothing at all.
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
 * The average of an initial short-term test and this one, at one decimal: ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(b). After
 * mitigation none: the earlier test measured the house as it was.
 */
function averageWithEarlier({ site }: Plan, { shortTerm }: EarlierResults, mean: Exact): Exact | null {
  if (!shortTerm || site.purpose === 'after-mitigation') return null;
  return rounded(meanOf([inPicocuries(shortTerm), mean]), 1);
}

type Evaluated = Pick<LocationReport, 'set' | 'mean' | 'pairStatus' | 'earlier' | 'withEarlier'>;

/** Where the location does not hold, the step names what is to be mended or repeated and nothing from the value. */
function nextStep(plan: Plan, judged: Evaluated, { validity, issues }: TestState, whole: TestState): NextStep {
  const { mean } = judged;
  if (validity === 'holds' && mean && isComplete(judged))
    return withholdNoAction(NEXT_STEPS[nextStepForMean(plan, judged, mean)], whole);
  const step = NEXT_STEPS[validity === 'not-evaluated' ? validity : openStep(judged)];
  return { ...step, text: [step.text, ...issues.map(issueText)].join(' ') };
}

/** A location that stands lets no home go while the test as a whole does not stand. */
function withholdNoAction(step: NextStep, { validity, issues }: TestState): NextStep {
  if (validity === 'holds' || step.noActionPhrases.length === 0) return step;
  const wait = NEXT_STEPS['wait-for-the-rest'];
  return { ...wait, text: [wait.text, ...issues.map(issueText)].join(' ') };
}

const isComplete = ({ set }: Evaluated): boolean => set.detectors.length <= set.readings.length;

/** What is waited for before anything is decided. */
function openStep(judged: Evaluated): NextStepId {
  if (!judged.mean) return 'undecided';
  return isComplete(judged) ? 'unknown' : 'wait-for-results';
}
