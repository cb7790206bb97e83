import type { Mm } from '../../../geometry/plan/model.ts';
import { echoLength } from '../../../geometry/units/format.ts';
import { type LengthOptions, parseLength } from '../../../geometry/units.ts';
import { useAppStore } from '../../state/store.ts';
import { TypedField } from './typed-field.tsx';

interface Props extends LengthOptions {
  readonly label: string;
  readonly value: Mm;
  /** Takes the length over; answers why not, in words, or nothing. */
  readonly onCommit: (mm: Mm) => string | undefined;
  readonly hint?: string;
}

/** A length as one says it on site. What is typed is echoed as it was understood; what is not a length is refused in words. */
export function LengthField({ label, value, onCommit, hint, ...options }: Props) {
  const unit = useAppStore((state) => state.plan.display.length);
  return (
    <TypedField
      label={label}
      shown={echoLength(value, unit).replace(/^about /, '≈ ')}
      hint={hint}
      read={(text) => {
        const length = parseLength(text, unit, options);
        return length.ok ? { ok: true, value: length.mm, echo: length.echo } : length;
      }}
      onCommit={onCommit}
    />
  );
}
