import type { Agreement } from '../../../geometry/plan/test-record.ts';

export type AgreementState = 'signed' | 'refused' | 'open';

/** A signature needs a name; a refusal may come from somebody who gave none. */
export function agreementState({ refused, signedBy }: Agreement): AgreementState {
  if (refused) return 'refused';
  return signedBy.trim() ? 'signed' : 'open';
}
