import type { RadonUnit } from '../../../../geometry/plan/test-record.ts';
import { digitsText, enteredText, otherUnitText, unitText } from '../../../protocol/results/radon.ts';
import { type EnteredRadon, isLikelySlip, parseRadon } from '../../../protocol/results/radon-input.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { TypedField } from '../../fields/typed-field.tsx';

const UNITS = (['pCi/L', 'Bq/m3'] as const).map((value) => ({ value, words: unitText(value) }));

interface Props {
  /** What the result is of, for the labels of both fields. */
  readonly of: string;
  readonly value: EnteredRadon | null;
  /** Unit of the next entered number. */
  readonly unit: RadonUnit;
  readonly hint?: string;
  /** Stores a result, null for none. Returns why it was refused, in words; empty or undefined if it was stored. */
  readonly onEnter: (entered: EnteredRadon | null) => string | undefined;
  readonly onUnit: (unit: RadonUnit) => void;
}

/** Fields for a result as the laboratory reported it, number and unit, and its value in the other unit. Changing the unit keeps the number. */
export function RadonFields({ of, value, unit, hint, onEnter, onUnit }: Props) {
  return (
    <div className="radon">
      <TypedField<EnteredRadon | null>
        label={`Result of ${of}`}
        shown={value === null ? '' : shownText(value)}
        read={(text) => {
          const read = parseRadon(text, unit);
          if (!read.ok) return read;
          return { ok: true, value: read.entered, echo: read.entered ? shownText(read.entered) : 'not known' };
        }}
        onCommit={onEnter}
      />
      <ChoiceField label={`Unit of ${of}`} value={unit} choices={UNITS} onCommit={onUnit} />
      <p className="radon__other small soft">{value ? `${enteredText(value)} is ${otherUnitText(value)}.` : hint}</p>
      {value && isLikelySlip(value) && (
        <p className="radon__other small">
          {enteredText(value)} is far more than homes have. Check the decimal point and the unit.
        </p>
      )}
    </div>
  );
}

const shownText = ({ belowLimit, ...entered }: EnteredRadon): string =>
  `${belowLimit ? '< ' : ''}${digitsText(entered)}`;
