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
  /** The id of the input, for commands that focus it. */
  readonly id?: string;
  readonly label: string;
  readonly value: Mm;
  /** Stores the length. Returns why it was refused, in words; empty or undefined if it was stored. */
  readonly onCommit: (mm: Mm) => string | undefined;
  readonly hint?: string;
  /** Called when the field gets or loses the focus. */
  readonly onFocus?: ((isIn: boolean) => void) | undefined;
  /** Formats a length between two marks of a tape; as a measured length if left out. */
  readonly says?: (mm: Mm, unit: LengthUnit) => string;
  /** Maximum length that the plan allows here. */
  readonly most?: Mm;
}

/** A field for a length in the units of the plan. Shows the parsed value; refuses text that is no length, with a message. */
export function LengthField({
  id,
  label,
  value,
  onCommit,
  hint,
  onFocus,
  says = formatMeasured,
  most,
  ...options
}: Props) {
  const unit = useAppStore((state) => state.plan.display.length);
  return (
    <TypedField
      id={id}
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
