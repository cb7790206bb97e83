import { TypedField } from './typed-field.tsx';

interface Props {
  readonly id?: string;
  readonly label: string;
  /** Null: not known. */
  readonly value: number | null;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** Whether the field may be left empty. */
  readonly mayBeEmpty?: boolean;
  /** Converts another notation to a plain number: "42.9 S" to "-42.9". */
  readonly inDigits?: (text: string) => string;
  readonly onCommit: (value: number | null) => string | undefined;
  readonly hint?: string;
}

/** A field for a plain number with a unit and limits, such as an angle or a latitude. */
export function NumberField(props: Props) {
  const { id, label, value, unit, least, most, mayBeEmpty = false, inDigits, onCommit, hint } = props;
  return (
    <TypedField<number | null>
      id={id}
      label={label}
      shown={value === null ? '' : `${rounded(value)}${unit}`}
      hint={hint}
      // The number pad of a phone has no minus and no letters.
      isNumber={least >= 0 && !inDigits}
      read={(text) => {
        const typed = text.replaceAll(unit.trim() || ' ', '').trim();
        const plain = inDigits?.(typed) ?? typed;
        if (plain === '' && mayBeEmpty) return { ok: true, value: null, echo: 'not known' };
        const range = `${least} to ${most}${unit}`;
        if (plain === '') return { ok: false, message: `Enter a number, ${range}.` };
        if (!/^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.test(plain)) {
          return { ok: false, message: `"${text.trim()}" is not a number. Enter ${range}.` };
        }
        const number = Number(plain.replace(',', '.'));
        if (number < least || number > most) {
          return { ok: false, message: `${plain}${unit} is too ${number < least ? 'low' : 'high'}. Enter ${range}.` };
        }
        return { ok: true, value: number, echo: `${rounded(number)}${unit}` };
      }}
      onCommit={onCommit}
    />
  );
}

const rounded = (value: number): string => String(Math.round(value * 10_000) / 10_000);
