import { useId } from 'react';
import './fields.css';

export interface Choice<T extends string> {
  readonly value: T;
  readonly words: string;
}
interface Props<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices:
    | readonly Choice<T>[]
    | readonly { readonly group: string; readonly choices: readonly Choice<T>[] }[];
  readonly onCommit: (value: T) => void;
  readonly hint?: string;
}

/** One of a few. The browser's own list: it works by finger, by keyboard and for a screen reader. */
export function ChoiceField<T extends string>({ label, value, choices, onCommit, hint }: Props<T>) {
  const id = useId();
  return (
    <div className="field">
      <label className="field__label" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="field__input"
        value={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
        // The options are all of type T.
        onChange={(event) => onCommit(event.currentTarget.value as T)}
      >
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
