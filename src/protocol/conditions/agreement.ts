import type { Plan } from '../../../geometry/plan/model.ts';
import type { Agreement } from '../../../geometry/plan/test-record.ts';

export type AgreementState = 'signed' | 'refused' | 'open';

/** Returns the state of an agreement. A signature needs a name; a refusal may be without one. */
export function agreementState({ refused, signedBy }: Agreement): AgreementState {
  if (refused) return 'refused';
  return signedBy.trim() ? 'signed' : 'open';
}

const UNSIGNED: Agreement = { signedBy: '', at: null, refused: false, note: '' };

/** Returns the agreement of a plan; an unsigned one where there is none. */
export const agreementOf = ({ agreement = UNSIGNED }: Plan): Agreement => agreement;

/** Returns the plan with its agreement changed. */
export function withAgreement(plan: Plan, change: Partial<Agreement>): Plan {
  return { ...plan, agreement: { ...agreementOf(plan), ...change } };
}
