import type { Plan } from '../../../geometry/plan/model.ts';
import { lowerFirst } from '../../../geometry/plan/nouns.ts';
import { notRecorded } from '../required-items/not-recorded.ts';
import { testHeadline } from './headline.ts';
import type { TestState } from './validity.ts';

/**
 * Returns the headline for documents and the command line: "The test: valid so far." For a valid test it adds the number of required items
 * of the report that are not recorded. In a separate file from `headline.ts`, because the lists are not loaded at the start of the app.
 */
export function headlineSentence(plan: Plan, state: TestState): string {
  const { head } = testHeadline(plan, state);
  const gaps = state.validity === 'holds' ? notRecorded(plan).short : '';
  return `The test: ${lowerFirst(head)}. ${gaps}`.trim();
}
