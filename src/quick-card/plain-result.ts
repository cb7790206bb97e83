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

/** A result in plain sentences. */
export interface PlainResult {
  /** "Your result: 2.1 pCi/L." */
  readonly value: string;
  /** Whether it can be relied on, and the step that it calls for. */
  readonly text: string;
  /** Issues because of which it cannot be relied on; empty for none. */
  readonly issues: readonly ValidityIssue[];
}

/**
 * Returns the results of a plan in sentences for the people in the house; null without a result. A result that is not valid has no next
 * step.
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

/** The average that a pair is evaluated by; an average that must not be used is left out. */
function averageWords({ display }: Plan, { values, mean, pairStatus, atMost }: LocationReport): readonly string[] {
  if (!mean || values.length < 2 || pairStatus === 'straddles-by-two') return [];
  return [`Average: ${atMost ? 'at most ' : ''}${radonInBothUnits(mean, display.radon)}.`];
}

const INVALID = 'It is invalid: do not use it. Something went wrong in the test.';
const UNKNOWN = 'Whether it can be relied on is not known yet. Settle first what stands here.';

/** Whether a result as reported is at the action level or above; one below the detection limit is not. */
const isHigh = (reading: Reading): boolean =>
  !reading.belowLimit && isAtLeast(rounded(inPicocuries(reading), 1), US_ACTION_LEVEL);
