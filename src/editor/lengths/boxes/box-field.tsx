import type { RefObject } from 'react';
import { LENGTH_INPUT } from '../../tape/length-input.ts';

/** A field of a box on the sheet, with its label. The status of the box says what is wrong with its text. */
export function BoxField({
  label,
  field,
  value,
  placeholder,
  statusId,
  isInvalid = false,
  isTurn = false,
  isSelected = false,
  onType,
  onKey,
  onLeave,
}: {
  readonly label: string;
  readonly field?: RefObject<HTMLInputElement | null>;
  readonly value: string;
  readonly placeholder?: string;
  readonly statusId: string;
  readonly isInvalid?: boolean;
  /** Whether the field holds degrees, not a length. */
  readonly isTurn?: boolean;
  /** Whether the text is selected on focus, so that typing replaces it. */
  readonly isSelected?: boolean;
  readonly onType: (text: string) => void;
  /** Takes a key in place of the browser. Returns false for a key that it does not take. */
  readonly onKey: (event: React.KeyboardEvent<HTMLInputElement>) => boolean;
  readonly onLeave?: (event: React.FocusEvent<HTMLInputElement>) => void;
}) {
  return (
    <label>
      {label}
      <input
        ref={field}
        value={value}
        placeholder={placeholder}
        {...(isTurn ? {} : LENGTH_INPUT)}
        inputMode={isTurn ? 'text' : 'decimal'}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        aria-describedby={statusId}
        aria-invalid={isInvalid}
        onChange={(event) => onType(event.target.value)}
        onFocus={(event) => isSelected && event.currentTarget.select()}
        onBlur={onLeave}
        onKeyDown={(event) => {
          if (onKey(event)) event.preventDefault();
          // Keys that are typed here do nothing on the sheet.
          event.stopPropagation();
        }}
      />
    </label>
  );
}
