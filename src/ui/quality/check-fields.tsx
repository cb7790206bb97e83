import type { QualityCheck } from '../../../geometry/plan/test-record.ts';
import { unitText } from '../../protocol/results/radon.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { InstantField } from '../fields/instant-field.tsx';
import { NumberField } from '../fields/number-field.tsx';
import { TextField } from '../fields/text-field.tsx';

/** A blank or spike that is being entered: its result may still be missing. */
export type CheckDraft = Omit<QualityCheck, 'id' | 'value'> & { readonly value: number | null };

interface Props {
  readonly check: CheckDraft;
  readonly zone: string;
  /** Stores the change. Returns why it was refused, in words; empty if it was stored. */
  readonly onChange: (patch: Partial<CheckDraft>) => string;
}

const KINDS = [
  { value: 'blank', words: 'Blank' },
  { value: 'spike', words: 'Spike' },
] as const;
const UNITS = [
  { value: 'pCi/L', words: 'pCi/L' },
  { value: 'Bq/m3', words: 'Bq/m³' },
] as const;

export function CheckFields({ check, zone, onChange }: Props) {
  const unit = unitText(check.unit);
  const figure = (label: string, key: 'value' | 'reference' | 'detectionLimit', hint?: string) => (
    <NumberField
      label={`${label}, ${unit}`}
      value={check[key]}
      unit=""
      least={0}
      most={1e6}
      // A stored result can be changed but not removed.
      mayBeEmpty={key !== 'value' || check.value === null}
      onCommit={(value) => onChange({ [key]: value })}
      {...(hint ? { hint } : {})}
    />
  );
  return (
    <div className="fields book__fields">
      <ChoiceField
        label="Kind"
        value={check.kind}
        choices={KINDS}
        hint={check.kind === 'blank' ? 'Never opened.' : 'Of known exposure.'}
        onCommit={(kind) => onChange({ kind })}
      />
      <ChoiceField label="Unit" value={check.unit} choices={UNITS} onCommit={(next) => onChange({ unit: next })} />
      {figure('Result', 'value')}
      {check.kind === 'spike' && figure('Exposed to', 'reference')}
      {check.kind === 'blank' && figure('Detection limit', 'detectionLimit', 'Of the laboratory.')}
      <TextField label="Serial" value={check.serial} onCommit={(serial) => onChange({ serial })} />
      <TextField label="Sent by" value={check.by} onCommit={(by) => onChange({ by })} />
      <InstantField
        label="When"
        hint="Without a date it counts for no month."
        value={check.at}
        zone={zone}
        onCommit={(at) => onChange({ at })}
      />
      <div className="wide">
        <TextField label="Note" value={check.note} onCommit={(note) => onChange({ note })} />
      </div>
    </div>
  );
}
