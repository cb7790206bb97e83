import type { Verdict } from '../../../geometry/check/types.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { evaluateResults } from '../results/evaluate-results.ts';
import { disagreement, isConclusive } from '../results/location-report.ts';
import { locationName } from '../results/locations.ts';
import { isRetest } from '../results/next-steps.ts';
import { amountsInUnit } from '../results/radon.ts';
import { homeStep } from './home-step.ts';
import type { TestStage } from './test-stages.ts';
import { issueText, type TestState, type ValidityIssue, validityWords } from './validity.ts';

/** The state of the whole test in one line; its tone is that of the worst part. */
export interface TestHeadline {
  readonly tone: Verdict;
  /** "Invalid, do not use", "Valid so far", "Not begun". */
  readonly head: string;
  /** The first issue, or the next step, in a sentence or two. */
  readonly text: string;
  /** Number of further issues. */
  readonly more: number;
  /** Stage in which the first issue is fixed; null without one. */
  readonly stage: TestStage | null;
}

/**
 * Returns the headline of a test.
 * @param state of the same plan
 */
export function testHeadline(plan: Plan, state: TestState): TestHeadline {
  const [worst, ...others] = state.issues;
  const { head } = validityWords(plan, state);
  if (plan.levels.every(({ detectors }) => detectors.length === 0)) {
    return { tone: 'unknown', head: 'Not begun', text: 'No detector is placed yet.', more: 0, stage: 'place' };
  }
  if (worst) {
    const tone = worst.validity === 'unknown' ? 'unknown' : 'blocked';
    return { tone, head, text: worst.text, more: others.length, stage: worst.stage };
  }
  const sets = evaluateResults(plan, state);
  const open = sets.filter((set) => !isConclusive(set) || isRetest(set.next.id));
  const [first] = open;
  if (first) {
    const text = `${locationName(first)}: ${[disagreement(first), first.next.text].filter(Boolean).join(' ')}`;
    const said = isRetest(first.next.id) ? 'Valid, and calls for another test' : 'Valid, but the pair disagrees';
    return { tone: 'blocked', head: said, text, more: open.length - 1, stage: 'read' };
  }
  const house = homeStep(plan, sets);
  if (house.step === 'unknown') {
    return { tone: 'unknown', head: 'Valid so far', text: house.text, more: 0, stage: 'place' };
  }
  const tone = state.notes.length > 0 ? 'tight' : 'clear';
  return { tone, head, text: [...state.notes, house.text].join(' '), more: 0, stage: null };
}

/** Returns the first issue, or the next step, and the number of further issues, for places without room for all. */
export function headlineDetail(plan: Plan, state: TestState): string {
  const { text, more } = testHeadline(plan, state);
  return `${amountsInUnit(plan.display.radon, text)}${more > 0 ? ` And ${more} more.` : ''}`;
}

/** Returns the meaning of the validity and every issue, or the next step if there is none. For paper, without the stages of the app. */
export function describeIssues(plan: Plan, state: TestState): readonly string[] {
  return withIssues(plan, state, ({ text }) => text);
}

/** Returns the same with the stage of the app in which each issue is fixed. */
export function describeIssuesToFix(plan: Plan, state: TestState): readonly string[] {
  return withIssues(plan, state, issueText);
}

function withIssues(plan: Plan, state: TestState, words: (issue: ValidityIssue) => string): readonly string[] {
  if (state.issues.length === 0) return [headlineDetail(plan, state)];
  return [validityWords(plan, state).text, ...state.issues.map(words), ...state.notes];
}
