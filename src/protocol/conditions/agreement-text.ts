import type { Plan } from '../../../geometry/plan/model.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { MAH, MAMF, source } from '../sources.ts';
import { type AgreementState, agreementOf, agreementState } from './agreement.ts';

/** Sources for the agreement not to interfere, and for keeping a refusal on record. */
export const AGREEMENT_SOURCES: readonly Source[] = [
  MAH('Exh. 2'),
  MAMF('2.6.4'),
  source('secondary', 'EPA guide for home buyers and sellers, on signed agreements'),
  source('memory', 'EPA guide for home buyers and sellers, on a refusal'),
];

const STATE_TEXT: Readonly<Record<AgreementState, string>> = {
  signed: 'Signed.',
  refused:
    'Signing was refused. Keep it on record; a certified or licensed professional decides whether the test continues.',
  open: 'Not signed yet. Ask the owner, seller or occupant; the form is below.',
};

/** Returns the state of a plan's agreement in sentences, with what is not recorded. */
export function describeAgreement(plan: Plan): string {
  const agreement = agreementOf(plan);
  const state = agreementState(agreement);
  const who = state === 'refused' && !agreement.signedBy.trim() ? 'Who refused is not recorded.' : '';
  const when = state !== 'open' && agreement.at === null ? 'When is not recorded.' : '';
  return [STATE_TEXT[state], who, when].filter(Boolean).join(' ');
}
