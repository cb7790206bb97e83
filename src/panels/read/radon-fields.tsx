import type { RadonUnit, RadonValue } from '../../../geometry/plan/model.ts';
import { otherUnitText, unitText } from '../../job/readings/radon.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { NumberField } from '../fields/number-field.tsx';

const UNITS = (['pCi/L', 'Bq/m3'] as const).map((value) => ({ value, words: unitText(value) }));

interface Props {
  /** Of what, in the labels of both fields. */
  readonly of: string;
  readonly value: number | null;
  readonly unit: RadonUnit;
  readonly hint?: string;
  /** Null empties it; left out, it may not be empty. */
  readonly onEmpty?: () => string | undefined;
  readonly onValue: (value: number) => string | undefined;
  readonly onUnit: (unit: RadonUnit) => void;
}

/** A result as the laboratory wrote it, number and unit, with the same in the other unit below. To change the unit leaves the number as it is. */
export function RadonFields({ of, value, unit, hint, onEmpty, onValue, onUnit }: Props) {
  const entered: RadonValue | null = value === null ? null : { value, unit };
  return (
    <div className="radon">
      <NumberField
        label={`Result of ${of}`}
        value={value}
        unit=""
        least={0}
        most={1e6}
        mayBeEmpty={onEmpty !== undefined || value === null}
        onCommit={(next) => (next === null ? onEmpty?.() : onValue(next))}
      />
      <ChoiceField label={`Unit of ${of}`} value={unit} choices={UNITS} onCommit={onUnit} />
      <p className="radon__other small soft">
        {entered ? `${entered.value} ${unitText(unit)} is ${otherUnitText(entered)}.` : hint}
      </p>
    </div>
  );
}
