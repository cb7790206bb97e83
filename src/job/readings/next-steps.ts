import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS, ILLINOIS_APPENDIX_B, MAH, MALB, MSQA, NEW_JERSEY, ourReading, source } from '../sources.ts';
import { CANADA_GUIDE } from './action-levels.ts';

/** What comes after a result. */
export interface NextStep {
  readonly id: NextStepId;
  /** The step in a sentence or two. */
  readonly says: string;
  readonly sources: readonly Source[];
  /** Where another published text says otherwise; empty where none is known to. */
  readonly conflict: string;
  /** The words of `says` that let a home go without anything done at once; none where the step asks for something now. */
  readonly clears: readonly string[];
}

export type NextStepId =
  | 'not-evaluated'
  | 'unknown'
  | 'wait-for-the-rest'
  | 'undecided'
  | 'wait-for-results'
  | 'retest-straddles'
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

const GUIDE = source('secondary', "EPA 402/K-12/002, Citizen's Guide");
const BUYERS = source('secondary', "EPA 402/K series, Home Buyer's and Seller's Guide");
const ILLINOIS_FACTS = source('secondary', 'Illinois fact sheet for homeowners');
const ILLINOIS_2005 = source('secondary', 'Illinois rules of 2005, in summaries');
const OTHER_SEASON = source('secondary', 'ANSI/AARST practice as a course sums it up, on the other season');
const CANADA = source('secondary', 'Health Canada, radon measurements in homes, in Canadian summaries');
const CANADA_HOW_SOON = source('memory', 'Health Canada guideline, on how soon to reduce');
const HOMES = source('secondary', 'EPA 402-R-92-003, as told by the national programme');

/** One row for each step, the strict reading by default. Amounts are pCi/L. */
export const NEXT_STEPS: Readonly<Record<NextStepId, NextStep>> = {
  'not-evaluated': {
    id: 'not-evaluated',
    says: 'These results are not evaluated. Keep the record, mend the cause, and test again.',
    sources: [MAH('6.1'), ILLINOIS('(b)(1)'), NEW_JERSEY('16(a)7')],
    conflict: '',
    clears: [],
  },
  unknown: {
    id: 'unknown',
    says: 'Whether these results stand is not known. Nothing is decided by them before this is settled.',
    sources: [MAH('6.1'), ILLINOIS('(b)(1)')],
    conflict: '',
    clears: [],
  },
  'wait-for-the-rest': {
    id: 'wait-for-the-rest',
    says: 'The result of this location stands. What it means is said when the rest of the test stands too.',
    sources: [],
    conflict: '',
    clears: [],
  },
  undecided: {
    id: 'undecided',
    says: 'One detector has two results. Look at the report of the laboratory, keep the right one, and judge again.',
    sources: [],
    conflict: '',
    clears: [],
  },
  'wait-for-results': {
    id: 'wait-for-results',
    says: 'Only one result of the pair is in. Wait for the other before anything is decided.',
    sources: [MAH('8.5.2(c)')],
    conflict: '',
    clears: [],
  },
  'retest-straddles': {
    id: 'retest-straddles',
    says: 'Test again with a new pair: one result is at 4 pCi/L or above, the other below, and the higher is twice the lower or more. Do not use the average. No new test is needed where the cause is proven, or where the owner decides to fix the home.',
    sources: [
      HOMES,
      MAH('7.2.2, exception'),
      source('memory', 'ANSI/AARST MAH-2019, 7.2.2'),
      ourReading('ANSI/AARST MW-RN-2020, 8.5, written for radon in water, for air'),
    ],
    conflict:
      'At exactly twice, EPA summaries still use the average ("more than twice"). "Twice or more" was read in a standard for radon in water only (ANSI/AARST MW-RN-2020, 8.5); it is the strict reading.',
    clears: [],
  },
  'retest-spread': {
    id: 'retest-spread',
    says: 'The two results are farther apart than chance allows. Find the cause, tell the laboratory, and test again before anything rests on them.',
    sources: [
      MSQA('3.5'),
      NEW_JERSEY('10(c)'),
      ourReading('a new test of the home, where the texts ask for the cause'),
    ],
    conflict: 'Both below 4 pCi/L, the EPA text still uses the average and asks for no mitigation.',
    clears: [],
  },
  fix: {
    id: 'fix',
    says: 'Fix the home: call a certified or licensed mitigator, and test again after the system has run for 24 hours.',
    sources: [MAH('7.1'), MAH('7.3.2'), GUIDE],
    conflict:
      'The guide says to consider fixing: at an average of 4.1 pCi/L of two short tests the year comes to less than 4 about every second time. To fix is the strict reading.',
    clears: [],
  },
  'fix-sale': {
    id: 'fix-sale',
    says: 'In a sale: fix the home, with a certified or licensed mitigator, and test again after the system has run for 24 hours.',
    sources: [ILLINOIS_APPENDIX_B, BUYERS],
    conflict: '',
    clears: [],
  },
  'fix-sale-either': {
    id: 'fix-sale-either',
    says: 'In a sale: fix the home, with a certified or licensed mitigator, and test again after the system has run for 24 hours. Of this test and its average with the earlier one, one is at 4 pCi/L or above.',
    sources: [ILLINOIS_APPENDIX_B, BUYERS],
    conflict:
      'EPA texts go by the average of a first test and a later one. Illinois no longer lists that way: there the pair of one test decides. Either of them at 4 pCi/L or above is the strict reading.',
    clears: [],
  },
  'fix-long-term': {
    id: 'fix-long-term',
    says: 'The long-term test here was at 4 pCi/L or above: fix the home, and test again after the system has run for 24 hours. A short test that reads lower does not undo it.',
    sources: [GUIDE, HOMES],
    conflict: '',
    clears: [],
  },
  'retest-later-sale': {
    id: 'retest-later-sale',
    says: 'In a sale: by this test no mitigation is asked for. Below 2 pCi/L a short test cannot tell how low the home is: the figure is near the least that a detector can measure, and nothing is said about the year. Test again within 2 years, and after any renovation.',
    sources: [ILLINOIS_APPENDIX_B, MAH('7.1'), MAH('8.5.9.2')],
    conflict:
      'ANSI/AARST MAH-2019, 8.5.9.2 asks for a test at least every 5 years and at the next sale; 2 years is the strict reading.',
    clears: ['no mitigation is asked for'],
  },
  'call-mitigator': {
    id: 'call-mitigator',
    says: 'The system does not bring the home below 4 pCi/L. Call the mitigator back, and test again 24 hours after the repair.',
    sources: [MAH('7.1 and 7.3.2')],
    conflict: '',
    clears: [],
  },
  'retest-mitigated': {
    id: 'retest-mitigated',
    says: 'By this test the system holds the home below 4 pCi/L. From 2 pCi/L on consider asking the mitigator for more. Test again at least every 2 years.',
    sources: [MAH('7.1'), MAH('8.5.9.2')],
    conflict: '',
    clears: ['holds the home below 4 pCi/L'],
  },
  'second-test-now': {
    id: 'second-test-now',
    says: 'Do a second short-term test at once, in the same spot. If the average of the two is 4 pCi/L or more, fix the home.',
    sources: [ILLINOIS_FACTS, GUIDE],
    conflict:
      'The guide asks for it at more than twice the action level, so above 8 pCi/L; the Illinois fact sheet from 8 pCi/L on, the strict reading. The 1993 EPA text as told by the national programme, and the 2005 Illinois rules, set it at 10 pCi/L.',
    clears: [],
  },
  'follow-up': {
    id: 'follow-up',
    says: 'Follow up: a long-term test for the year-round average, or a second short-term test when an answer is needed soon.',
    sources: [GUIDE, HOMES],
    conflict: '',
    clears: [],
  },
  'consider-fixing': {
    id: 'consider-fixing',
    says: 'Consider fixing the home: there is no safe level. Test again in the other season, and within 2 years.',
    sources: [MAH('7.1'), GUIDE, OTHER_SEASON, ILLINOIS_2005],
    conflict: 'The 1993 EPA text says only to test again sometime; older Illinois pages say after 2 years.',
    clears: ['Consider fixing the home', 'within 2 years'],
  },
  'consider-fixing-sale': {
    id: 'consider-fixing-sale',
    says: 'In a sale too: consider fixing the home, there is no safe level. No mitigation is asked for below 4 pCi/L. Test again within 2 years, and after any renovation.',
    sources: [MAH('7.1'), ILLINOIS_APPENDIX_B, MAH('8.5.9.2')],
    conflict:
      'Illinois asks for no more than a test within 2 years. ANSI/AARST MAH-2019, 8.5.9.2 asks for one at least every 5 years and at the next sale; 2 years is the strict reading.',
    clears: ['consider fixing the home', 'No mitigation is asked for'],
  },
  'retest-later': {
    id: 'retest-later',
    says: 'Below 2 pCi/L this test calls for no fixing. A short test cannot tell how low the home is there: the figure is near the least that a detector can measure, and nothing is said about the year. Test again at least every 5 years, after a renovation, and when someone moves to a lower level.',
    sources: [MAH('7.1'), MAH('8.5.9.2'), GUIDE],
    conflict: 'Some states ask for every 2 to 5 years.',
    clears: ['calls for no fixing'],
  },
  'below-after-two': {
    id: 'below-after-two',
    says: 'The average of the first test and its follow-up is below 4 pCi/L. From 2 pCi/L on consider fixing the home. Consider a long-term test, and test again within 2 years.',
    sources: [MALB('8.1.2(b)'), MAH('7.1'), GUIDE, ILLINOIS_2005],
    conflict: '',
    clears: ['is below 4 pCi/L'],
  },
  'reduce-soon-long': {
    id: 'reduce-soon-long',
    says: 'The long-term result is above 600 Bq/m³: reduce it within a year, with a certified or licensed professional, and test again after the work.',
    sources: [CANADA_GUIDE, CANADA_HOW_SOON],
    conflict: '',
    clears: [],
  },
  'reduce-long': {
    id: 'reduce-long',
    says: 'The long-term result is above 200 Bq/m³: reduce it within two years, with a certified or licensed professional, and test again after the work. The higher it is, the sooner.',
    sources: [CANADA_GUIDE, CANADA_HOW_SOON],
    conflict: '',
    clears: [],
  },
  'below-long': {
    id: 'below-long',
    says: 'The long-term result is not above 200 Bq/m³: the guideline asks for nothing to be reduced. There is no safe level; lower is better. Test again after a renovation, and when someone moves to a lower level.',
    sources: [CANADA_GUIDE, CANADA],
    conflict: 'The World Health Organization names 100 Bq/m³, and not more than 300 where that cannot be reached.',
    clears: ['asks for nothing to be reduced'],
  },
};

/** Whether a step says that this test has to be done again before anything rests on it. */
export const isRetest = (step: NextStepId): boolean =>
  step === 'retest-straddles' || step === 'retest-spread' || step === 'not-evaluated';

/** From here a second short-term test at once, pCi/L: the Illinois fact sheet. The guide says above it, others from 10 on. */
export const SECOND_TEST_FROM = 8;

/** The most cautious first: of several locations of a home the first that is reached decides. */
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
