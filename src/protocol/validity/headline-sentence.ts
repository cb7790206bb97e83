import type { Plan } from '../../../geometry/plan/model.ts';
import { lowerFirst } from '../../../geometry/plan/nouns.ts';
import { notRecorded } from '../required-items/not-recorded.ts';
import { testHeadline } from './headline.ts';
import type { TestState } from './validity.ts';

/**
 * Returns the headline as documents and the command line have it: "The test: valid so far." Beside a test that is valid it counts what
 * published lists require of its report and nobody recorded. Apart from `headline.ts`: the lists are not part of the start.
 */
export function headlineSentence(plan: Plan, state: TestState): string {
  const { head } = testHeadline(plan, state);
  const gaps = state.validity === 'holds' ? notRecorded(plan).short : '';
  return `The test: ${lowerFirst(head)}. ${gaps}`.trim();
}
