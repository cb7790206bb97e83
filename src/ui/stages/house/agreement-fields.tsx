import { describeSources } from '../../../../geometry/messages/sources.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Agreement } from '../../../../geometry/plan/test-record.ts';
import {
  type AgreementState,
  agreementOf,
  agreementState,
  withAgreement,
} from '../../../protocol/conditions/agreement.ts';
import { AGREEMENT_SOURCES, describeAgreement } from '../../../protocol/conditions/agreement-text.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

const STATE: Readonly<Record<AgreementState, string>> = { signed: 'signed', refused: 'refused', open: 'not signed' };

/** Who signed the agreement not to interfere with the test, or refused to sign it. */
export function AgreementFields({ plan }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const agreement = agreementOf(plan);
  const state = agreementState(agreement);
  const change = (patch: Partial<Agreement>) => run((now) => withAgreement(now, patch));
  return (
    <details className="group">
      <summary>
        Non-interference agreement: <span className="soft">{STATE[state]}</span>
      </summary>
      <div className="fields">
        <p className="wide" role="status">
          {describeAgreement(plan)}
        </p>
        <div className="wide">
          <TextField
            label={state === 'refused' ? 'Who refused' : 'Who signed'}
            value={agreement.signedBy}
            hint="Owner, seller or occupant."
            onCommit={(signedBy) => change({ signedBy })}
          />
        </div>
        <InstantField
          label={state === 'refused' ? 'When it was refused' : 'When it was signed'}
          value={agreement.at}
          zone={plan.site.timeZone}
          refuse={notAhead(plan.site.timeZone)}
          onCommit={(at) => change({ at })}
        />
        <label className="wide house-check">
          <input
            type="checkbox"
            checked={agreement.refused}
            onChange={(event) => change({ refused: event.currentTarget.checked })}
          />
          Signing was refused
        </label>
        <div className="wide">
          <TextField label="Note" value={agreement.note} onCommit={(note) => change({ note })} />
        </div>
        <details className="wide small soft">
          <summary>Source</summary>
          {describeSources(AGREEMENT_SOURCES)}
        </details>
      </div>
    </details>
  );
}
