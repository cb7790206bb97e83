import type { Plan } from '../../../geometry/plan/model.ts';
import { TEST_STAGE_NAME, type TestStage } from './test-stages.ts';

/** Whether results may be used. The worst of several counts: "not-evaluated" before "unknown" before "holds". */
export type Validity = 'holds' | 'unknown' | 'not-evaluated';

/** One reason why a test is not valid, or not known to be. */
export interface ValidityIssue {
  readonly validity: Exclude<Validity, 'holds'>;
  readonly stage: TestStage;
  /** The issue in a sentence or two, without the stage in which it is fixed. */
  readonly text: string;
  /** Ids of the affected detectors; null for all. */
  readonly detectors: readonly string[] | null;
}

/** Validity of a whole test, or of one location, with the reasons. */
export interface TestState {
  readonly validity: Validity;
  /** Worst first; empty where the test holds. */
  readonly issues: readonly ValidityIssue[];
  /** Remarks that do not affect validity: tight placement, no forecast. */
  readonly notes: readonly string[];
}

/** The end of the text of an issue, by the stage in which it is fixed. */
const WHERE_TO_FIX: Readonly<Record<TestStage, string>> = {
  site: 'Record this under Property.',
  draw: 'Answer or draw this under Draw.',
  place: 'Correct this under Place.',
  time: 'Correct this under Time.',
  house: 'Correct this under House.',
  log: 'Correct this under Log.',
  read: 'Enter this under Results.',
};

/** Label of the button that opens a stage. */
export const STAGE_BUTTON: Readonly<Record<TestStage, string>> = {
  site: 'Review the property',
  draw: 'Review the drawing',
  place: 'Review the placement',
  time: 'Review the times',
  house: 'Review the house',
  log: 'Review the log',
  read: 'Review the results',
};

/** The meaning of the validity of a test for its results; empty for a valid test. */
export const VALIDITY_TEXT: Readonly<Record<Validity, string>> = {
  holds: '',
  'not-evaluated': 'This test is invalid: its results are kept on record. Do not use them.',
  unknown: 'Whether this test is valid is not known: no result of it passes before what is missing is recorded.',
};

/** The validity as a headline. */
export const VALIDITY_HEADLINE: Readonly<Record<Validity, string>> = {
  holds: 'Valid',
  'not-evaluated': 'Invalid, do not use',
  unknown: 'Unknown',
};

/** Words for a test without results whose placement or times make it invalid, and can be corrected before the pick-up. */
const AS_IT_STANDS = {
  head: 'Invalid as it stands',
  text: 'As it stands this test is invalid. Before the pick-up this can still be corrected.',
};

/** Returns whether every cause that makes a test invalid can still be corrected, and no result is affected. */
export const isOpenToCorrection = (
  { visit, readings }: Pick<Plan, 'visit' | 'readings'>,
  { validity, issues }: TestState,
): boolean =>
  validity === 'not-evaluated' &&
  visit.end === null &&
  readings.length === 0 &&
  issues.every((each) => each.validity !== validity || each.stage === 'place' || each.stage === 'time');

/** Returns the headline of a test, and the meaning of its validity for the results. */
export function validityWords(
  plan: Pick<Plan, 'visit' | 'readings'>,
  state: TestState,
): { readonly head: string; readonly text: string } {
  if (isOpenToCorrection(plan, state)) return AS_IT_STANDS;
  return { head: VALIDITY_HEADLINE[state.validity], text: VALIDITY_TEXT[state.validity] };
}

const RANK: Readonly<Record<Validity, number>> = { 'not-evaluated': 0, unknown: 1, holds: 2 };

/** Returns the state that follows from issues: the worst decides. */
export function testStateFrom(reasons: readonly ValidityIssue[], notes: readonly string[] = []): TestState {
  const sorted = reasons.toSorted((a, b) => RANK[a.validity] - RANK[b.validity]);
  return { validity: sorted[0]?.validity ?? 'holds', issues: sorted, notes };
}

/** Returns the state with the issues of some detectors and those of all. */
export function stateForDetectors({ issues }: TestState, detectors: readonly { readonly id: string }[]): TestState {
  return testStateFrom(
    issues.filter(({ detectors: of }) => of === null || detectors.some(({ id }) => of.includes(id))),
  );
}

/**
 * Returns the text of an issue with the stage in which it is fixed. The cause of an invalid test has happened: the text asks to correct
 * only what was recorded wrong.
 */
export const issueText = ({ validity, text, stage }: ValidityIssue): string =>
  `${text} ${validity === 'not-evaluated' ? `Recorded under ${TEST_STAGE_NAME[stage]}: correct only what was recorded wrong.` : WHERE_TO_FIX[stage]}`;
