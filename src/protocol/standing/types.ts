/** Whether results may be used: not evaluated outweighs unknown, and unknown outweighs holds. */
export type TestStanding = 'holds' | 'unknown' | 'not-evaluated';

/** The stage of the job in which a cause is mended. */
export type StandingStage = 'site' | 'draw' | 'place' | 'time' | 'house' | 'log' | 'read';

/** One cause for which a test does not hold, or is not known to. */
export interface StandingReason {
  readonly standing: Exclude<TestStanding, 'holds'>;
  readonly stage: StandingStage;
  /** The cause in a sentence or two, without where it is mended. */
  readonly says: string;
  /** Ids of the detectors whose results it takes; null: all of them. */
  readonly detectors: readonly string[] | null;
}

/** The state of a whole test, or of one location of it. */
export interface TestState {
  readonly test: TestStanding;
  /** Worst first; none where it holds. */
  readonly reasons: readonly StandingReason[];
  /** What takes nothing away and is said all the same: tight placement. */
  readonly notes: readonly string[];
}

/** Where each cause is mended, as the end of its sentence. */
const MENDED: Readonly<Record<StandingStage, string>> = {
  site: 'To be written down under Site.',
  draw: 'To be answered or drawn under Draw.',
  place: 'To be mended under Place.',
  time: 'To be mended under Time.',
  house: 'To be mended under House.',
  log: 'To be mended under Log.',
  read: 'To be entered under Read.',
};

/** The press that leads there. */
export const STAGE_PRESS: Readonly<Record<StandingStage, string>> = {
  site: 'Look at the site',
  draw: 'Look at the drawing',
  place: 'Look at the placing',
  time: 'Look at the times',
  house: 'Look at the house',
  log: 'Look at the log',
  read: 'Look at the results',
};

/** What the standing of a test means for all its results; empty where it holds. */
export const STANDING_WORDS: Readonly<Record<TestStanding, string>> = {
  holds: '',
  'not-evaluated': 'This test does not hold: its results are kept and not evaluated.',
  unknown: 'Whether this test holds is not known: no result of it passes before what is missing is written down.',
};

/** The standing in a word, as a headline has it. */
export const STANDING_HEAD: Readonly<Record<TestStanding, string>> = {
  holds: 'Holds',
  'not-evaluated': 'Not evaluated',
  unknown: 'Unknown',
};

const RANK: Readonly<Record<TestStanding, number>> = { 'not-evaluated': 0, unknown: 1, holds: 2 };

/** The state that these causes come to: the worst decides. */
export function stateOf(reasons: readonly StandingReason[], notes: readonly string[] = []): TestState {
  const sorted = reasons.toSorted((a, b) => RANK[a.standing] - RANK[b.standing]);
  return { test: sorted[0]?.standing ?? 'holds', reasons: sorted, notes };
}

/** The same for the results of some of the detectors. */
export function stateFor({ reasons }: TestState, detectors: readonly { readonly id: string }[]): TestState {
  return stateOf(reasons.filter(({ detectors: of }) => of === null || detectors.some(({ id }) => of.includes(id))));
}

/** A cause with where it is mended. */
export const reasonText = ({ says, stage }: StandingReason): string => `${says} ${MENDED[stage]}`;
