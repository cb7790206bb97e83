import type { Plan } from '../../../geometry/plan/model.ts';
import type { SecondOpinion } from '../../../geometry/recheck/recheck.ts';

/** Message to the worker that computes verdicts a second time; its response has the same number. */
export interface RecheckRequest {
  readonly number: number;
  readonly plan: Plan;
}
export interface RecheckResponse {
  readonly number: number;
  readonly opinion: SecondOpinion;
}
