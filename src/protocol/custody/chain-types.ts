import type { Ms } from '../timing/clock.ts';

export type StepKind = 'set-out' | 'fetched' | 'sealed' | 'hand-over' | 'posted' | 'received';

/** One thing that happened to a detector on its way from the house to the laboratory. */
export interface ChainStep {
  readonly kind: StepKind;
  /** Null: not written down. */
  readonly at: Ms | null;
  readonly from: string;
  /** Who has it from then on; empty where that is not written down. A seal changes no hands. */
  readonly to: string;
  readonly note: string;
  /** Place among the hand-overs of the log, in the order in which they were written; null for what is no hand-over. */
  readonly index: number | null;
  /** What does not fit, in sentences; a chain with any is no proof. */
  readonly discrepancies: readonly string[];
}

export interface Chain {
  /** In order of time. A step whose time is not known stays after the one that was written before it. */
  readonly steps: readonly ChainStep[];
  /** Who has it now, in words; empty while it has not been set out. */
  readonly currentHolder: string;
  readonly hasDiscrepancies: boolean;
}

export const HOUSE = 'the house';
export const POST = 'the post';
export const LABORATORY = 'the laboratory';

/** A step before it is held against the others. */
export type UncheckedStep = Omit<ChainStep, 'discrepancies'>;
