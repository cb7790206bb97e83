import type { TestState } from '../validity/validity.ts';
import type { EarlierResults } from './earlier-results.ts';
import type { Exact } from './exact.ts';
import type { LocationResults } from './locations.ts';
import { isRetest, type NextStep } from './next-steps.ts';
import type { ControlStatus, Precision } from './precision.ts';

/** How the results of one location compare with each other. */
export type PairStatus = ControlStatus | 'straddles-by-two' | 'single';

/** Evaluation of one location. Concentrations in pCi/L, exact. */
export interface LocationReport {
  readonly set: LocationResults;
  readonly values: readonly Exact[];
  /** Null where a detector has more than one result. */
  readonly mean: Exact | null;
  /** The mean to one decimal, halves up: the value that is compared with limits. */
  readonly meanRounded: Exact | null;
  /** Percent; null for a single result, or where both are zero. */
  readonly rpd: Exact | null;
  readonly pairStatus: PairStatus;
  /** Comparison of the pair with its control limits; null for a single result. */
  readonly precision: Precision | null;
  /** The higher result is exactly twice the lower: another published reading uses the average. */
  readonly straddleDisputed: boolean;
  /** Validity of this location, with its issues. */
  readonly state: TestState;
  readonly next: NextStep;
  /** Earlier results of this location. */
  readonly earlier: EarlierResults;
  /** Average with the earlier short-term result of this location, to one decimal; null where none counts. */
  readonly withEarlier: Exact | null;
  /** A result is below the detection limit and counts as that limit: the mean is an upper bound. */
  readonly atMost: boolean;
}

/** What is said of a pair that is out of control. */
export const OUT_OF_CONTROL = 'The two results are too far apart: out of control. Find the cause before going on.';

/** Returns how a pair disagrees, where its next step does not tell it; else empty. */
export const disagreement = ({ pairStatus, next }: LocationReport): string =>
  pairStatus === 'out-of-control' && !isRetest(next.id) ? OUT_OF_CONTROL : '';

/** Whether the location is valid and its results can be used. */
export function isConclusive({ pairStatus, state, mean }: LocationReport): boolean {
  return (
    state.validity === 'holds' && mean !== null && pairStatus !== 'straddles-by-two' && pairStatus !== 'out-of-control'
  );
}
