import type { Plan } from '../../../geometry/plan/model.ts';
import type { SecondOpinion } from '../../../geometry/recheck/recheck.ts';

/** What the page asks of the worker that computes again, and what comes back. */
export interface RecheckRequest {
  readonly number: number;
  readonly plan: Plan;
}
export interface RecheckResponse {
  readonly number: number;
  readonly opinion: SecondOpinion;
}
