import type { Plan } from '../../geometry/plan/model.ts';
import { evaluateResults } from '../protocol/results/evaluate-results.ts';
import { amountsInUnit, enteredText } from '../protocol/results/radon.ts';
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
  if (state.validity === 'not-evaluated') {
    return {
      value,
      text: 'It is invalid: do not use it. Something went wrong in the test. Test again.',
      issues: state.issues,
    };
  }
  if (state.validity === 'unknown') {
    return { value, text: 'Its validity is not known yet: something is not recorded.', issues: state.issues };
  }
  return { value, text: amountsInUnit(plan.display.radon, homeStep(plan, reports).text), issues: [] };
}
