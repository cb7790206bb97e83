import type { Plan, Reading } from '../../../geometry/plan/model.ts';
import { isAtLeast, US_ACTION_LEVEL, US_CONSIDER_LEVEL } from './action-levels.ts';
import { type EarlierHere, earlierHere } from './earlier.ts';
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
  /** What was measured in this place before. */
  readonly earlier: EarlierHere;
  /** The average with the earlier short-term result of the same place, at one decimal; null where there is none, or where it does not count. */
  readonly withEarlier: Exact | null;
  /** Some result is below the limit of the laboratory and counts as that limit: the mean is at most this. */
  readonly atMost: boolean;
}

/** Whether the times of the test, and the conditions in the house, let its results be used. */
export type TestStanding = 'holds' | 'not-evaluated' | 'unknown';

/** What the standing of a test means for all its results; empty where it holds. */
export const STANDING_WORDS: Readonly<Record<TestStanding, string>> = {
  holds: '',
  'not-evaluated': 'The times or the house of this test do not hold: its results are kept and not evaluated.',
  unknown: 'Whether this test holds is not known: no result of it passes before what is missing is written down.',
};

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
  const pair = undecided ? null : widest(set.readings);
  const precision = pair && pairPrecision(pair);
  const twice = pair ? straddle(pair) : 'no';
  const earlier = earlierHere(plan, set);
  const agreement: SetAgreement = twice !== 'no' ? 'straddles-by-two' : (precision?.agreement ?? 'single');
  // What must not be used is averaged with nothing either.
  const complete = set.detectors.length === set.readings.length && agreement !== 'straddles-by-two';
  const withEarlier = mean && complete ? averagedWith(plan, earlier, mean) : null;
  const partial = { set, values, mean, agreement, precision, earlier, withEarlier };
  return {
    ...partial,
    meanRounded: mean && rounded(mean, 1),
    rpd: pair && relativePercentDifference(pair.low.value, pair.high.value),
    straddleDisputed: twice === 'exactly',
    atMost: set.readings.some(({ belowLimit }) => belowLimit),
    next: NEXT_STEPS[nextStepId(plan, partial, standing)],
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
function widest(readings: readonly Reading[]): Pair | null {
  if (readings.length < 2) return null;
  const sorted = readings
    .map((reading): Result => ({ value: inPicocuries(reading), below: reading.belowLimit === true }))
    .sort((a, b) => compare(a.value, b.value) || Number(b.below) - Number(a.below));
  return { low: sorted[0] as Result, high: sorted.at(-1) as Result };
}

/** Both below the limit of the laboratory agree, whatever the limits: ANSI/AARST MS-QA-2019, Table 7.1. */
function pairPrecision({ low, high }: Pair): Precision {
  const precision = precisionOf(low.value, high.value);
  return low.below && high.below ? { ...precision, agreement: 'in-control', otherwise: null } : precision;
}

/**
 * One result at the action level or above, the other below, and the higher at least twice the lower. The level is held against
 * results at one decimal, as they are reported; the factor is exact. Below the limit of the laboratory it may be nothing at all.
 */
function straddle({ low, high }: Pair): 'no' | 'exactly' | 'more' {
  const reported = (value: Exact) => isAtLeast(rounded(value, 1), US_ACTION_LEVEL);
  if (reported(low.value) || !reported(high.value)) return 'no';
  const double = low.below ? exact(0n) : times(low.value, exact(2n));
  if (!atLeast(high.value, double)) return 'no';
  return compare(high.value, double) === 0 ? 'exactly' : 'more';
}

/**
 * The average of an initial short-term test and this one, at one decimal: ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(b). After
 * mitigation none: the earlier test measured the house as it was.
 */
function averagedWith({ site }: Plan, { shortTerm }: EarlierHere, mean: Exact): Exact | null {
  if (!shortTerm || site.purpose === 'after-mitigation') return null;
  return rounded(meanOf([inPicocuries(shortTerm), mean]), 1);
}

type Judged = Pick<SetReport, 'set' | 'mean' | 'agreement' | 'precision' | 'earlier' | 'withEarlier'>;

function nextStepId({ site }: Plan, judged: Judged, standing: TestStanding): NextStepId {
  const { set, mean, agreement, withEarlier } = judged;
  if (standing === 'not-evaluated') return 'not-evaluated';
  if (!mean) return 'undecided';
  if (set.detectors.length > set.readings.length) return 'wait-for-results';
  if (agreement === 'straddles-by-two') return 'retest-straddles';
  const own = rounded(mean, 1);
  const decide = { 'own-household': householdStep, 'property-transfer': saleStep, 'after-mitigation': mitigatedStep };
  const step = decide[site.purpose](own, withEarlier, judged.earlier);
  const high = isAtLeast(withEarlier ?? own, US_ACTION_LEVEL) || step === 'fix-sale-either' || step === 'fix-long-term';
  return agreement === 'out-of-control' && !high ? 'retest-spread' : step;
}

const isHigh = (result: Exact): boolean => isAtLeast(result, US_ACTION_LEVEL);
const wasHighForLong = ({ longTerm }: EarlierHere): boolean =>
  longTerm !== null && isHigh(rounded(inPicocuries(longTerm), 1));

/** In a sale the test itself decides, and the average with an earlier one where that is the stricter. */
function saleStep(own: Exact, withEarlier: Exact | null, earlier: EarlierHere): NextStepId {
  if (isHigh(own)) return withEarlier && !isHigh(withEarlier) ? 'fix-sale-either' : 'fix-sale';
  if (withEarlier && isHigh(withEarlier)) return 'fix-sale-either';
  return wasHighForLong(earlier) ? 'fix-long-term' : 'retest-later-sale';
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
  if (isAtLeast(result, US_ACTION_LEVEL)) return 'follow-up';
  return isAtLeast(result, US_CONSIDER_LEVEL) ? 'consider-fixing' : 'retest-later';
}
