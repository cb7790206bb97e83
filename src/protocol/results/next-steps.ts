/** The next step after a result. Sources are in `next-step-sources.ts`, which is not loaded at the start of the app. */
export interface NextStep {
  readonly id: NextStepId;
  /** The step in a sentence or two. */
  readonly text: string;
  /** The phrases of `text` that call for no immediate action; none if the step calls for action now. */
  readonly noActionPhrases: readonly string[];
}

export type NextStepId =
  | 'not-evaluated'
  | 'unknown'
  | 'wait-for-the-rest'
  | 'undecided'
  | 'wait-for-results'
  | 'retest-straddles'
  | 'retest-straddles-long'
  | 'retest-spread'
  | 'fix'
  | 'fix-sale'
  | 'fix-sale-either'
  | 'fix-long-term'
  | 'retest-later-sale'
  | 'call-mitigator'
  | 'retest-mitigated'
  | 'second-test-now'
  | 'follow-up'
  | 'consider-fixing'
  | 'consider-fixing-sale'
  | 'retest-later'
  | 'below-after-two'
  | 'reduce-soon-long'
  | 'reduce-long'
  | 'below-long';

/** Every next step; the strict reading if published texts differ. Amounts are in pCi/L. */
export const NEXT_STEPS: Readonly<Record<NextStepId, NextStep>> = {
  'not-evaluated': {
    id: 'not-evaluated',
    text: 'These results are invalid: do not use them. Keep the record, correct the cause, and test again.',
    noActionPhrases: [],
  },
  unknown: {
    id: 'unknown',
    text: 'Whether these results are valid is not known. Do not act on them until this is settled.',
    noActionPhrases: [],
  },
  'wait-for-the-rest': {
    id: 'wait-for-the-rest',
    text: 'The result of this location is valid. What it calls for is given once the rest of the test is valid too.',
    noActionPhrases: [],
  },
  undecided: {
    id: 'undecided',
    text: 'One detector has two results. Check the report of the laboratory and keep the right one.',
    noActionPhrases: [],
  },
  'wait-for-results': {
    id: 'wait-for-results',
    text: 'Only one result of the pair is in. Decide nothing before the other is in.',
    noActionPhrases: [],
  },
  'retest-straddles': {
    id: 'retest-straddles',
    text: 'Test again with a new pair: one result is at 4 pCi/L or above, the other below, and the higher is twice the lower or more. Do not use the average. No new test is needed where the cause is proven, or where the owner decides to fix the home.',
    noActionPhrases: [],
  },
  'retest-straddles-long': {
    id: 'retest-straddles-long',
    text: 'Test again with a new pair: one long-term result is above 200 Bq/m³, the other is not, and the higher is twice the lower or more. Do not use the average. No new test is needed where the cause is proven, or where the owner decides to reduce it.',
    noActionPhrases: [],
  },
  'retest-spread': {
    id: 'retest-spread',
    text: 'The two results are farther apart than chance allows. Find the cause, tell the laboratory, and test again before using them.',
    noActionPhrases: [],
  },
  fix: {
    id: 'fix',
    text: 'Fix the home: call a certified or licensed mitigator, and test again after the system has run for 24 hours.',
    noActionPhrases: [],
  },
  'fix-sale': {
    id: 'fix-sale',
    text: 'In a sale: fix the home, with a certified or licensed mitigator, and test again after the system has run for 24 hours.',
    noActionPhrases: [],
  },
  'fix-sale-either': {
    id: 'fix-sale-either',
    text: 'In a sale: fix the home, with a certified or licensed mitigator, and test again after the system has run for 24 hours. Of this test and its average with the earlier one, one is at 4 pCi/L or above.',
    noActionPhrases: [],
  },
  'fix-long-term': {
    id: 'fix-long-term',
    text: 'The long-term test here was at 4 pCi/L or above: fix the home, and test again after the system has run for 24 hours. A lower short-term result does not change that.',
    noActionPhrases: [],
  },
  'retest-later-sale': {
    id: 'retest-later-sale',
    text: 'In a sale: this result does not call for mitigation. It does not show that the home is free of radon. Below 2 pCi/L a short-term test cannot show how low the home is: the figure is near the least that a detector can measure, and the result says nothing about the whole year. Test again within 2 years, and after any renovation.',
    noActionPhrases: ['this result does not call for mitigation'],
  },
  'call-mitigator': {
    id: 'call-mitigator',
    text: 'The system does not bring the home below 4 pCi/L. Call the mitigator back, and test again 24 hours after the repair.',
    noActionPhrases: [],
  },
  'retest-mitigated': {
    id: 'retest-mitigated',
    text: 'In this test the system kept the home below 4 pCi/L. At 2 pCi/L or more, consider asking the mitigator for a lower level. Test again at least every 2 years.',
    noActionPhrases: ['kept the home below 4 pCi/L'],
  },
  'second-test-now': {
    id: 'second-test-now',
    text: 'Do a second short-term test at once, in the same spot. If the average of the two is 4 pCi/L or more, fix the home.',
    noActionPhrases: [],
  },
  'follow-up': {
    id: 'follow-up',
    text: 'Follow up: a long-term test for the year-round average, or a second short-term test when an answer is needed soon.',
    noActionPhrases: [],
  },
  'consider-fixing': {
    id: 'consider-fixing',
    text: 'Consider fixing the home: there is no safe level. Test again in the other season, and within 2 years.',
    noActionPhrases: ['Consider fixing the home', 'within 2 years'],
  },
  'consider-fixing-sale': {
    id: 'consider-fixing-sale',
    text: 'In a sale too: consider fixing the home, for no level is safe. Below 4 pCi/L this result does not call for mitigation. Test again within 2 years, and after any renovation.',
    noActionPhrases: ['consider fixing the home', 'this result does not call for mitigation'],
  },
  'retest-later': {
    id: 'retest-later',
    text: 'This result, below 2 pCi/L, does not call for fixing the home. A short-term test cannot show how low the home is: the figure is near the least that a detector can measure, and the result says nothing about the whole year. Test again at least every 5 years, after a renovation, and when someone moves to a lower level.',
    noActionPhrases: ['does not call for fixing the home'],
  },
  'below-after-two': {
    id: 'below-after-two',
    text: 'The average of the first test and its follow-up is below 4 pCi/L. At 2 pCi/L or more, consider fixing the home. Consider a long-term test, and test again within 2 years.',
    noActionPhrases: ['is below 4 pCi/L'],
  },
  'reduce-soon-long': {
    id: 'reduce-soon-long',
    text: 'The long-term result is above 600 Bq/m³: reduce it within a year, with a certified or licensed professional, and test again after the work.',
    noActionPhrases: [],
  },
  'reduce-long': {
    id: 'reduce-long',
    text: 'The long-term result is above 200 Bq/m³: reduce it within two years, with a certified or licensed professional, and test again after the work. The higher it is, the sooner.',
    noActionPhrases: [],
  },
  'below-long': {
    id: 'below-long',
    text: 'The long-term result is not above 200 Bq/m³: this result does not call for reducing it. There is no safe level; lower is better. Test again after a renovation, and when someone moves to a lower level.',
    noActionPhrases: ['this result does not call for reducing it'],
  },
};

/** Returns whether a step calls for a retest before the result is used. */
export const isRetest = (step: NextStepId): boolean =>
  step === 'retest-straddles' ||
  step === 'retest-straddles-long' ||
  step === 'retest-spread' ||
  step === 'not-evaluated';

/** Level from which a second short-term test is done at once, pCi/L: the Illinois fact sheet. EPA's guide says above it, other texts from 10. */
export const SECOND_TEST_FROM = 8;

/** Most cautious first: of several locations of a home, the step that is first in this list decides. */
export const MOST_CAUTIOUS_FIRST: readonly NextStepId[] = [
  'fix',
  'fix-sale',
  'fix-sale-either',
  'fix-long-term',
  'call-mitigator',
  'reduce-soon-long',
  'reduce-long',
  'second-test-now',
  'retest-straddles',
  'retest-straddles-long',
  'retest-spread',
  'follow-up',
  'not-evaluated',
  'undecided',
  'wait-for-results',
  'unknown',
  'wait-for-the-rest',
  'consider-fixing',
  'consider-fixing-sale',
  'below-after-two',
  'retest-mitigated',
  'retest-later-sale',
  'retest-later',
  'below-long',
];
