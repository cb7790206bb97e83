import type { Plan } from '../../../geometry/plan/model.ts';
import type { SecondOpinion } from '../../../geometry/recheck/recheck.ts';

/** What the page asks of the worker that computes again, and what comes back. */
export interface SecondCall {
  readonly number: number;
  readonly plan: Plan;
}
export interface SecondAnswer {
  readonly number: number;
  readonly opinion: SecondOpinion;
}
