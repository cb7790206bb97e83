import type { Plan } from '../../geometry/plan/model.ts';
import type { Reading } from '../../geometry/plan/test-record.ts';
import { isAtLeast, US_ACTION_LEVEL } from '../protocol/results/action-levels.ts';
import { describePair } from '../protocol/results/describe-pair.ts';
import { evaluateResults } from '../protocol/results/evaluate-results.ts';
import { rounded } from '../protocol/results/exact.ts';
import type { LocationReport } from '../protocol/results/location-report.ts';
import { isRetest } from '../protocol/results/next-steps.ts';
import { amountsInUnit, enteredText, inPicocuries, radonInBothUnits } from '../protocol/results/radon.ts';
import { homeStep } from '../protocol/validity/home-step.ts';
import type { TestState, ValidityIssue } from '../protocol/validity/validity.ts';

/** What a result says, in plain sentences. */
export interface PlainResult {
  /** "Your result: 2.1 pCi/L." */
  readonly value: string;
  /** Whether it can be relied on, and the step that it calls for. */
  readonly text: string;
  /** What is in the way of relying on it; empty where nothing is. */
  readonly issues: readonly ValidityIssue[];
}

/**
 * Returns what the results of a plan say to the people who live in the house; null without a result. No step follows from a result that
 * does not stand.
 * @param state validity of the whole test
 */
export function plainResult(plan: Plan, state: TestState): PlainResult | null {
  const reports = evaluateResults(plan, state);
  if (reports.length === 0) return null;
  const values = plan.readings.map((reading) => `${reading.belowLimit ? 'below ' : ''}${enteredText(reading)}`);
  const value = `Your ${values.length > 1 ? 'results' : 'result'}: ${values.join(' and ')}.`;
  const inUnit = (text: string) => amountsInUnit(plan.display.radon, text);
  const high = plan.readings.some(isHigh) ? ` It reads ${US_ACTION_LEVEL} pCi/L or more: do not set it aside.` : '';
  if (state.validity === 'not-evaluated') {
    return { value, text: inUnit(`${INVALID}${high} Test again${high ? ' soon' : ''}.`), issues: state.issues };
  }
  if (state.validity === 'unknown') {
    const unsettled = high ? `${high} Where it cannot be settled, test again soon.` : '';
    return { value, text: inUnit(`${UNKNOWN}${unsettled}`), issues: state.issues };
  }
  const { step, text } = homeStep(plan, reports);
  const apart = isRetest(step) ? [] : reports.filter(isApart).flatMap((report) => describePair(report).slice(0, 1));
  return {
    value: [value, ...reports.flatMap((report) => averageWords(plan, report))].join(' '),
    text: inUnit([...apart, text].join(' ')),
    issues: [],
  };
}

/** Whether two results differ by more than chance allows. */
const isApart = ({ pairStatus }: LocationReport): boolean =>
  pairStatus === 'warning' || pairStatus === 'out-of-control';

/** The average by which a pair is judged; an average that must not be used is not told. */
function averageWords({ display }: Plan, { values, mean, pairStatus, atMost }: LocationReport): readonly string[] {
  if (!mean || values.length < 2 || pairStatus === 'straddles-by-two') return [];
  return [`Average: ${atMost ? 'at most ' : ''}${radonInBothUnits(mean, display.radon)}.`];
}

const INVALID = 'It is invalid: do not use it. Something went wrong in the test.';
const UNKNOWN = 'Whether it can be relied on is not known yet. Settle first what stands here.';

/** Whether a result is at the action level or above, as it is reported; one below the limit of the laboratory is not. */
const isHigh = (reading: Reading): boolean =>
  !reading.belowLimit && isAtLeast(rounded(inPicocuries(reading), 1), US_ACTION_LEVEL);
