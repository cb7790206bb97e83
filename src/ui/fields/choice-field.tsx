import { useId } from 'react';
import './fields.css';

export interface Choice<T extends string> {
  readonly value: T;
  readonly words: string;
}
interface Props<T extends string> {
  readonly label: string;
  /** Null: not answered yet. Once it is answered, the list has no empty choice. */
  readonly value: T | null;
  readonly choices:
    | readonly Choice<T>[]
    | readonly { readonly group: string; readonly choices: readonly Choice<T>[] }[];
  readonly onCommit: (value: T) => void;
  readonly hint?: string;
  /** The id of the field, for commands that focus it. */
  readonly fieldId?: string;
}

/** A choice of one of several answers. A native select, which works by touch, by keyboard and with a screen reader. */
export function ChoiceField<T extends string>({ label, value, choices, onCommit, hint, fieldId }: Props<T>) {
  const own = useId();
  const id = fieldId ?? own;
  return (
    <div className="field">
      <label className="field__label" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="field__input"
        value={value ?? ''}
        data-open={value === null || undefined}
        aria-describedby={hint ? `${id}-hint` : undefined}
        // The options are all of type T.
        onChange={(event) => onCommit(event.currentTarget.value as T)}
      >
        {value === null && (
          <option value="" disabled>
            Not answered yet
          </option>
        )}
        {choices.map((choice) =>
          'group' in choice ? (
            <optgroup key={choice.group} label={choice.group}>
              {choice.choices.map(optionOf)}
            </optgroup>
          ) : (
            optionOf(choice)
          ),
        )}
      </select>
      {hint && (
        <p className="field__hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

function optionOf({ value, words }: Choice<string>) {
  return (
    <option key={value} value={value}>
      {words}
    </option>
  );
}
