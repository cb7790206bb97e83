import type { Mm } from '../../../geometry/plan/model.ts';
import { fieldLength } from '../../../geometry/units/format.ts';
import {
  formatLength,
  formatMeasured,
  type LengthOptions,
  type LengthUnit,
  parseLength,
} from '../../../geometry/units/index.ts';
import { useAppStore } from '../../state/store.ts';
import { TypedField } from './typed-field.tsx';

interface Props extends LengthOptions {
  readonly label: string;
  readonly value: Mm;
  /** Takes the length over. Returns why not, in words; empty or nothing when it did. */
  readonly onCommit: (mm: Mm) => string | undefined;
  readonly hint?: string;
  /** Called when the keyboard comes into the field, and when it leaves it. */
  readonly onFocus?: ((isIn: boolean) => void) | undefined;
  /** How a length between two marks of a tape is formatted: as a measured one if left out. */
  readonly says?: (mm: Mm, unit: LengthUnit) => string;
  /** The greatest length that the plan takes here. */
  readonly most?: Mm;
}

/** A field for a length in the units of the site. The parsed value is echoed; what is not a length is refused with a message. */
export function LengthField({ label, value, onCommit, hint, onFocus, says = formatMeasured, most, ...options }: Props) {
  const unit = useAppStore((state) => state.plan.display.length);
  return (
    <TypedField
      label={label}
      isLength
      shown={fieldLength(value, unit, says)}
      hint={hint}
      onFocus={onFocus}
      read={(text) => {
        const length = parseLength(text, unit, options);
        if (length.ok && most !== undefined && length.mm > most) {
          const limit = formatLength(most, unit, 'down');
          return { ok: false, message: `${length.echo} is too long here. Write at most ${limit}.` };
        }
        return length.ok
          ? { ok: true, value: length.mm, echo: fieldLength(length.mm, unit, says).replace(/^≈/, 'about') }
          : length;
      }}
      onCommit={onCommit}
    />
  );
}
