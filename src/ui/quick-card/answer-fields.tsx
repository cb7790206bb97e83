import type { Mm } from '../../../geometry/plan/model.ts';
import { formatMeasured, type LengthUnit } from '../../../geometry/units/index.ts';
import { readLength } from '../../quick-card/read-length.ts';
import { TypedField } from '../fields/typed-field.tsx';

interface Props<T> {
  readonly label: string;
  /** Null: not answered. An empty field withdraws the answer. */
  readonly value: T | null;
  readonly onCommit: (value: T | null) => void;
  readonly hint?: string;
}

interface LengthProps extends Props<Mm> {
  readonly unit: LengthUnit;
  /** Returns why a length is refused, in words; empty if it is accepted. */
  readonly refuse?: (mm: Mm) => string;
}

/** A field for a length that may stay empty. */
export function OpenLength({ unit, value, onCommit, refuse, ...rest }: LengthProps) {
  return (
    <TypedField<Mm | null>
      {...rest}
      shown={value === null ? '' : formatMeasured(value, unit)}
      read={(text) => {
        if (text.trim() === '') return { ok: true, value: null, echo: '' };
        const length = readLength(text, unit);
        if (!length.ok) return length;
        const message = refuse?.(length.mm) ?? '';
        return message ? { ok: false, message } : { ok: true, value: length.mm, echo: formatMeasured(length.mm, unit) };
      }}
      onCommit={(mm) => {
        onCommit(mm);
        return '';
      }}
    />
  );
}

interface NumberProps extends Props<number> {
  readonly least: number;
  readonly most: number;
}

/** A field for a number that may stay empty. */
export function OpenNumber({ value, onCommit, least, most, ...rest }: NumberProps) {
  return (
    <TypedField<number | null>
      {...rest}
      isNumber
      shown={value === null ? '' : String(value)}
      read={(text) => {
        if (text.trim() === '') return { ok: true, value: null, echo: '' };
        const number = Number(text.trim());
        const isIn = Number.isFinite(number) && number >= least && number <= most;
        if (!isIn) return { ok: false, message: `Write a number from ${least} to ${most}.` };
        return { ok: true, value: number, echo: String(number) };
      }}
      onCommit={(number) => {
        onCommit(number);
        return '';
      }}
    />
  );
}
