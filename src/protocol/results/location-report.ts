import type { TestState } from '../validity/validity.ts';
import type { EarlierResults } from './earlier-results.ts';
import type { Exact } from './exact.ts';
import type { LocationResults } from './locations.ts';
import type { NextStep } from './next-steps.ts';
import type { ControlStatus, Precision } from './precision.ts';

/** How the results of one location agree. */
export type PairStatus = ControlStatus | 'straddles-by-two' | 'single';

/** What the results of one location come to. Concentrations in pCi/L, exact. */
export interface LocationReport {
  readonly set: LocationResults;
  readonly values: readonly Exact[];
  /** null where no one figure may be given. */
  readonly mean: Exact | null;
  /** The mean at one decimal, a half up: what every limit is held against. */
  readonly meanRounded: Exact | null;
  /** Percent; null for a single result, or where both are zero. */
  readonly rpd: Exact | null;
  readonly pairStatus: PairStatus;
  /** How the pair keeps its limits; null for a single result. */
  readonly precision: Precision | null;
  /** At exactly twice the lower: the other published reading uses the average. */
  readonly straddleDisputed: boolean;
  /** Whether the results of this location may be used, and why not. */
  readonly state: TestState;
  readonly next: NextStep;
  /** What was measured in this place before. */
  readonly earlier: EarlierResults;
  /** The average with the earlier short-term result of the same place, at one decimal; null where there is none, or where it does not count. */
  readonly withEarlier: Exact | null;
  /** Some result is below the limit of the laboratory and counts as that limit: the mean is at most this. */
  readonly atMost: boolean;
}

/** Whether nothing about the location is open: it holds, and its results can be used. */
export function isConclusive({ pairStatus, state, mean }: LocationReport): boolean {
  return (
    state.validity === 'holds' && mean !== null && pairStatus !== 'straddles-by-two' && pairStatus !== 'out-of-control'
  );
}
