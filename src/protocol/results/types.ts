import type { TestState } from '../standing/types.ts';
import type { EarlierHere } from './earlier.ts';
import type { Exact } from './exact.ts';
import type { NextStep } from './next-steps.ts';
import type { Agreement, Precision } from './precision.ts';
import type { ReadingSet } from './sets.ts';

/** How the results of one location agree. */
export type SetAgreement = Agreement | 'straddles-by-two' | 'single';

/** What the results of one location come to. Concentrations in pCi/L, exact. */
export interface SetReport {
  readonly set: ReadingSet;
  readonly values: readonly Exact[];
  /** null where no one figure may be given. */
  readonly mean: Exact | null;
  /** The mean at one decimal, a half up: what every limit is held against. */
  readonly meanRounded: Exact | null;
  /** Percent; null for a single result, or where both are zero. */
  readonly rpd: Exact | null;
  readonly agreement: SetAgreement;
  /** How the pair keeps its limits; null for a single result. */
  readonly precision: Precision | null;
  /** At exactly twice the lower: the other published reading uses the average. */
  readonly straddleDisputed: boolean;
  /** Whether the results of this location may be used, and why not. */
  readonly state: TestState;
  readonly next: NextStep;
  /** What was measured in this place before. */
  readonly earlier: EarlierHere;
  /** The average with the earlier short-term result of the same place, at one decimal; null where there is none, or where it does not count. */
  readonly withEarlier: Exact | null;
  /** Some result is below the limit of the laboratory and counts as that limit: the mean is at most this. */
  readonly atMost: boolean;
}
