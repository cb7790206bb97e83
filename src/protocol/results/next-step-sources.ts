import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS_APPENDIX_B, ILLINOIS_RULES, MAH, MALB, MSQA, NEW_JERSEY, ourReading, source } from '../sources.ts';
import { CANADA_GUIDE } from './action-levels.ts';
import type { NextStepId } from './next-steps.ts';

/** Published sources of a next step. */
export interface NextStepSources {
  readonly sources: readonly Source[];
  /** Another published text that differs; empty if none is known. */
  readonly conflict: string;
}

const GUIDE = source('secondary', "EPA 402/K-12/002, Citizen's Guide");
const BUYERS = source('secondary', "EPA 402/K series, Home Buyer's and Seller's Guide");
const ILLINOIS_FACTS = source('secondary', 'Illinois fact sheet for homeowners');
const ILLINOIS_2005 = source('secondary', 'Illinois rules of 2005, in summaries');
const OTHER_SEASON = source('secondary', 'ANSI/AARST practice as a course sums it up, on the other season');
const CANADA = source('secondary', 'Health Canada, radon measurements in homes, in Canadian summaries');
const CANADA_HOW_SOON = source('memory', 'Health Canada guideline, on how soon to reduce');
const HOMES = source('secondary', 'EPA 402-R-92-003, as told by the national program');

/** Sources of every step of `next-steps.ts`. */
export const NEXT_STEP_SOURCES: Readonly<Record<NextStepId, NextStepSources>> = {
  'not-evaluated': {
    sources: [MAH('6.1'), ILLINOIS_RULES('(b)(1)'), NEW_JERSEY('16(a)7')],
    conflict: '',
  },
  unknown: {
    sources: [MAH('6.1'), ILLINOIS_RULES('(b)(1)')],
    conflict: '',
  },
  'wait-for-the-rest': {
    sources: [],
    conflict: '',
  },
  undecided: {
    sources: [],
    conflict: '',
  },
  'wait-for-results': {
    sources: [MAH('8.5.2(c)')],
    conflict: '',
  },
  'retest-straddles': {
    sources: [
      HOMES,
      MAH('7.2.2, exception'),
      source('memory', 'ANSI/AARST MAH-2019, 7.2.2'),
      ourReading('ANSI/AARST MW-RN-2020, 8.5, written for radon in water, for air'),
    ],
    conflict:
      'At exactly twice, EPA summaries still use the average ("more than twice"). "Twice or more" was read in a standard for radon in water only (ANSI/AARST MW-RN-2020, 8.5); it is the strict reading.',
  },
  'retest-straddles-long': {
    sources: [
      CANADA_GUIDE,
      source('memory', 'ANSI/AARST MAH-2019, 7.2.2'),
      ourReading('the factor of two, written for 4 pCi/L, at the level of a long-term test'),
    ],
    conflict: '',
  },
  'retest-spread': {
    sources: [
      MSQA('3.5'),
      NEW_JERSEY('10(c)'),
      ourReading('a new test of the home, where the texts ask for the cause'),
    ],
    conflict: 'Both below 4 pCi/L, the EPA text still uses the average and asks for no mitigation.',
  },
  fix: {
    sources: [MAH('7.1'), MAH('7.3.2'), GUIDE],
    conflict:
      'The guide says to consider fixing: at an average of 4.1 pCi/L of two short tests the year comes to less than 4 about every second time. To fix is the strict reading.',
  },
  'fix-sale': {
    sources: [ILLINOIS_APPENDIX_B, BUYERS],
    conflict: '',
  },
  'fix-sale-either': {
    sources: [ILLINOIS_APPENDIX_B, BUYERS],
    conflict:
      'EPA texts go by the average of a first test and a later one. Illinois no longer lists that way: there the pair of one test decides. Either of them at 4 pCi/L or above is the strict reading.',
  },
  'fix-long-term': {
    sources: [GUIDE, HOMES],
    conflict: '',
  },
  'retest-later-sale': {
    sources: [ILLINOIS_APPENDIX_B, MAH('7.1'), MAH('8.5.9.2')],
    conflict:
      'ANSI/AARST MAH-2019, 8.5.9.2 asks for a test at least every 5 years and at the next sale; 2 years is the strict reading.',
  },
  'call-mitigator': {
    sources: [MAH('7.1 and 7.3.2')],
    conflict: '',
  },
  'retest-mitigated': {
    sources: [MAH('7.1'), MAH('8.5.9.2')],
    conflict: '',
  },
  'second-test-now': {
    sources: [ILLINOIS_FACTS, GUIDE],
    conflict:
      'The guide asks for it at more than twice the action level, so above 8 pCi/L; the Illinois fact sheet from 8 pCi/L on, the strict reading. The 1993 EPA text as told by the national program, and the 2005 Illinois rules, set it at 10 pCi/L.',
  },
  'follow-up': {
    sources: [GUIDE, HOMES],
    conflict: '',
  },
  'consider-fixing': {
    sources: [MAH('7.1'), GUIDE, OTHER_SEASON, ILLINOIS_2005],
    conflict: 'The 1993 EPA text says only to test again sometime; older Illinois pages say after 2 years.',
  },
  'consider-fixing-sale': {
    sources: [MAH('7.1'), ILLINOIS_APPENDIX_B, MAH('8.5.9.2')],
    conflict:
      'Illinois asks for no more than a test within 2 years. ANSI/AARST MAH-2019, 8.5.9.2 asks for one at least every 5 years and at the next sale; 2 years is the strict reading.',
  },
  'retest-later': {
    sources: [MAH('7.1'), MAH('8.5.9.2'), GUIDE],
    conflict: 'Some states ask for every 2 to 5 years.',
  },
  'below-after-two': {
    sources: [MALB('8.1.2(b)'), MAH('7.1'), GUIDE, ILLINOIS_2005],
    conflict: '',
  },
  'reduce-soon-long': {
    sources: [CANADA_GUIDE, CANADA_HOW_SOON],
    conflict: '',
  },
  'reduce-long': {
    sources: [CANADA_GUIDE, CANADA_HOW_SOON],
    conflict: '',
  },
  'below-long': {
    sources: [CANADA_GUIDE, CANADA],
    conflict: 'The World Health Organization names 100 Bq/m³, and not more than 300 where that cannot be reached.',
  },
};
