import type { Plan } from '../../../geometry/plan/model.ts';
import { amountsInUnit } from '../results/radon.ts';
import { testHeadline } from './headline.ts';
import { reasonText, STANDING_WORDS, type TestState } from './types.ts';

/** The state of the whole test as a paper and the command line lead with it: "The test: holds so far." */
export function testLead(plan: Plan, state: TestState): string {
  const { head } = testHeadline(plan, state);
  return `The test: ${head.charAt(0).toLowerCase()}${head.slice(1)}.`;
}

/** The first cause, or what follows, and how many more there are: for where there is no room for all. */
export function testBrief(plan: Plan, state: TestState): string {
  const { says, more } = testHeadline(plan, state);
  return `${amountsInUnit(plan.display.radon, says)}${more > 0 ? ` And ${more} more.` : ''}`;
}

/** What the standing means, then every cause with where it is mended; of a test without a cause what follows. */
export function testCauses(plan: Plan, state: TestState): readonly string[] {
  if (state.reasons.length === 0) return [testBrief(plan, state)];
  return [STANDING_WORDS[state.test], ...state.reasons.map(reasonText), ...state.notes];
}
