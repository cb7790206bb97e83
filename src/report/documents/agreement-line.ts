import { capital } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { agreementOf, agreementState } from '../../protocol/conditions/agreement.ts';
import { formatAt } from './format-times.ts';

/** Returns a sentence that says who signed or refused the non-interference agreement, and when. */
export function agreementLine(plan: Plan): string {
  const agreement = agreementOf(plan);
  const { signedBy, at, note } = agreement;
  const state = agreementState(agreement);
  const who = signedBy.trim() ? ` by ${signedBy.trim()}` : '';
  const words =
    state === 'open'
      ? 'Not signed, as far as is known.'
      : `${capital(state)}${who}, ${formatAt(at, plan, 'at a time that is not known')}.`;
  return [words, note.trim()].filter(Boolean).join(' ');
}

/** Returns whether anything about the agreement is on record. */
export function isAgreementOnRecord(plan: Plan): boolean {
  const agreement = agreementOf(plan);
  return agreementState(agreement) !== 'open' || agreement.note.trim() !== '';
}
