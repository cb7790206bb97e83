/** Whether results may be used: not evaluated outweighs unknown, and unknown outweighs holds. */
export type Validity = 'holds' | 'unknown' | 'not-evaluated';

/** The stage of the job in which a cause is mended. */
export type TestStage = 'site' | 'draw' | 'place' | 'time' | 'house' | 'log' | 'read';

/** One cause for which a test does not hold, or is not known to. */
export interface ValidityIssue {
  readonly validity: Exclude<Validity, 'holds'>;
  readonly stage: TestStage;
  /** The cause in a sentence or two, without where it is mended. */
  readonly text: string;
  /** Ids of the detectors whose results it takes; null: all of them. */
  readonly detectors: readonly string[] | null;
}

/** The state of a whole test, or of one location of it. */
export interface TestState {
  readonly validity: Validity;
  /** Worst first; none where it holds. */
  readonly issues: readonly ValidityIssue[];
  /** What takes nothing away and is said all the same: tight placement. */
  readonly notes: readonly string[];
}

/** Where each cause is mended, as the end of its sentence. */
const WHERE_TO_FIX: Readonly<Record<TestStage, string>> = {
  site: 'To be written down under Site.',
  draw: 'To be answered or drawn under Draw.',
  place: 'To be mended under Place.',
  time: 'To be mended under Time.',
  house: 'To be mended under House.',
  log: 'To be mended under Log.',
  read: 'To be entered under Read.',
};

/** The press that leads there. */
export const STAGE_BUTTON: Readonly<Record<TestStage, string>> = {
  site: 'Look at the site',
  draw: 'Look at the drawing',
  place: 'Look at the placing',
  time: 'Look at the times',
  house: 'Look at the house',
  log: 'Look at the log',
  read: 'Look at the results',
};

/** What the standing of a test means for all its results; empty where it holds. */
export const VALIDITY_TEXT: Readonly<Record<Validity, string>> = {
  holds: '',
  'not-evaluated': 'This test does not hold: its results are kept and not evaluated.',
  unknown: 'Whether this test holds is not known: no result of it passes before what is missing is written down.',
};

/** The standing in a word, as a headline has it. */
export const VALIDITY_HEADLINE: Readonly<Record<Validity, string>> = {
  holds: 'Holds',
  'not-evaluated': 'Not evaluated',
  unknown: 'Unknown',
};

const RANK: Readonly<Record<Validity, number>> = { 'not-evaluated': 0, unknown: 1, holds: 2 };

/** The state that these causes come to: the worst decides. */
export function testStateFrom(reasons: readonly ValidityIssue[], notes: readonly string[] = []): TestState {
  const sorted = reasons.toSorted((a, b) => RANK[a.validity] - RANK[b.validity]);
  return { validity: sorted[0]?.validity ?? 'holds', issues: sorted, notes };
}

/** The same for the results of some of the detectors. */
export function stateForDetectors({ issues }: TestState, detectors: readonly { readonly id: string }[]): TestState {
  return testStateFrom(
    issues.filter(({ detectors: of }) => of === null || detectors.some(({ id }) => of.includes(id))),
  );
}

/** A cause with where it is mended. */
export const issueText = ({ text, stage }: ValidityIssue): string => `${text} ${WHERE_TO_FIX[stage]}`;
