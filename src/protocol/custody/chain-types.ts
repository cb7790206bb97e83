import type { Ms } from '../timing/clock.ts';

export type StepKind = 'set-out' | 'fetched' | 'sealed' | 'hand-over' | 'posted' | 'received';

/** One event in the chain of custody of a detector. */
export interface ChainStep {
  readonly kind: StepKind;
  /** Null where it is not recorded. */
  readonly at: Ms | null;
  readonly from: string;
  /** Who has the detector from then on; empty where it is not recorded. Sealing does not change it. */
  readonly to: string;
  readonly note: string;
  /** Index in the log's list of hand-overs; null for other steps. */
  readonly index: number | null;
  /** Contradictions, in sentences; a chain with any proves nothing. */
  readonly discrepancies: readonly string[];
}

export interface Chain {
  /** In order of time. A step without a time is placed after the step that was recorded before it. */
  readonly steps: readonly ChainStep[];
  /** Who has the detector, with the time, in words; empty before it is placed. */
  readonly currentHolder: string;
  readonly hasDiscrepancies: boolean;
}

export const HOUSE = 'the house';
export const POST = 'the mail';
export const LABORATORY = 'the laboratory';

/** A step before it is compared with the others. */
export type UncheckedStep = Omit<ChainStep, 'discrepancies'>;
