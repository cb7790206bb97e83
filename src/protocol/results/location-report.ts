import type { TestState } from '../validity/validity.ts';
import type { EarlierResults } from './earlier-results.ts';
import type { Exact } from './exact.ts';
import type { LocationResults } from './locations.ts';
import { isRetest, type NextStep } from './next-steps.ts';
import type { ControlStatus, Precision } from './precision.ts';

/** Agreement of the results of one location. */
export type PairStatus = ControlStatus | 'straddles-by-two' | 'single';

/** Evaluation of one location. Concentrations in pCi/L, exact. */
export interface LocationReport {
  readonly set: LocationResults;
  readonly values: readonly Exact[];
  /** Null if a detector has more than one result. */
  readonly mean: Exact | null;
  /** The mean to one decimal, halves up: the value that is compared with limits. */
  readonly meanRounded: Exact | null;
  /** Relative percent difference; null for a single result, or if both are zero. */
  readonly rpd: Exact | null;
  readonly pairStatus: PairStatus;
  /** Comparison of the pair with its control limits; null for a single result. */
  readonly precision: Precision | null;
  /** Whether the higher result is exactly twice the lower: another published reading then uses the average. */
  readonly straddleDisputed: boolean;
  /** Validity of this location, with its issues. */
  readonly state: TestState;
  readonly next: NextStep;
  /** Earlier results of this location. */
  readonly earlier: EarlierResults;
  /** Average with the earlier short-term result of this location, to one decimal; null if none counts. */
  readonly withEarlier: Exact | null;
  /** Whether a result is below the detection limit and counts as that limit, so that the mean is an upper bound. */
  readonly atMost: boolean;
}

/** Text for a pair that is out of control. */
export const OUT_OF_CONTROL = 'The two results are too far apart: out of control. Find the cause before going on.';

/** Returns a sentence on a pair that is out of control; empty for others, or if the next step says it. */
export const disagreement = ({ pairStatus, next }: LocationReport): string =>
  pairStatus === 'out-of-control' && !isRetest(next.id) ? OUT_OF_CONTROL : '';

/** Returns whether the location is valid and its results can be used. */
export function isConclusive({ pairStatus, state, mean }: LocationReport): boolean {
  return (
    state.validity === 'holds' && mean !== null && pairStatus !== 'straddles-by-two' && pairStatus !== 'out-of-control'
  );
}
