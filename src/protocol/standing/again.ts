import type { Plan } from '../../../geometry/plan/model.ts';
import { evaluateResults } from '../results/evaluate-results.ts';
import { isRetest } from '../results/next-steps.ts';
import { visitReasons } from './test-state.ts';
import { stateOf } from './types.ts';

/**
 * Why a test has to be done again, in a few words for a list of plans; empty where nothing that times, house and results tell asks for
 * it. Placement is left out: a list does not look at drawings.
 */
export function againWords(plan: Plan): string {
  if (plan.visit.end === null) return '';
  if (stateOf(visitReasons(plan)).test === 'not-evaluated') return 'Not evaluated: test again';
  const steps = evaluateResults(plan, stateOf([])).map(({ next }) => next.id);
  if (steps.some(isRetest)) return 'The results do not agree: test again';
  return '';
}
