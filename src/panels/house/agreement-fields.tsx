import type { Agreement, Plan } from '../../../geometry/plan/model.ts';
import { agreementOf, withAgreement } from '../../job/log/edit.ts';
import { useAppStore } from '../../state/store.ts';
import { InstantField } from '../fields/instant-field.tsx';
import { TextField } from '../fields/text-field.tsx';

/** Who signed not to interfere with the test, or refused to. */
export function AgreementFields({ plan }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const agreement = agreementOf(plan);
  const change = (patch: Partial<Agreement>) => run((now) => withAgreement(now, patch));
  return (
    <details className="group">
      <summary>
        Agreement <span className="soft">{stateOf(agreement)}</span>
      </summary>
      <div className="fields">
        <div className="wide">
          <TextField
            label="Owner, seller or occupant"
            value={agreement.signedBy}
            hint="Who signed not to interfere."
            onCommit={(signedBy) => change({ signedBy })}
          />
        </div>
        <InstantField
          label="Signed or refused"
          value={agreement.at}
          zone={plan.site.timeZone}
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
      </div>
    </details>
  );
}

function stateOf({ refused, signedBy }: Agreement): string {
  if (refused) return 'refused';
  return signedBy.trim() ? 'signed' : 'not signed';
}
