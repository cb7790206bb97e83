import type { Plan } from '../../../geometry/plan/model.ts';
import type { BestPlace, Wanted } from './seek.ts';

/** What the page asks of the worker that looks for places, and what comes back. */
export interface SeekCall {
  readonly number: number;
  readonly plan: Plan;
  readonly levelId: string;
  readonly wanted: Wanted;
}
export interface SeekAnswer {
  readonly number: number;
  readonly places: readonly BestPlace[];
}
