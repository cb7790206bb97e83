import { useEffect, useId, useState } from 'react';
import { oneLine } from '../../../geometry/messages/plain-text.ts';
import { useTypedSaved } from '../hooks/use-typed-saved.ts';
import './fields.css';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (text: string) => void;
  readonly placeholder?: string;
  readonly hint?: string;
  /** The id of a datalist with likely values. */
  readonly suggestions?: string;
  /** A name or a number: the on-screen keyboard must not correct it. */
  readonly exact?: boolean;
  readonly id?: string;
}

const AS_TYPED = { autoCorrect: 'off', spellCheck: false } as const;

/** A field for text without control characters, committed by Enter or on leaving the field, as one step of history. */
export function TextField({ label, value, onCommit, placeholder, hint, id: given, suggestions, exact }: Props) {
  const own = useId();
  const id = given ?? own;
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const commit = () => {
    if (text !== value) onCommit(text);
  };
  useTypedSaved(text === value ? null : text, commit);
  return (
    <div className="field">
      <label className="field__label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="field__input"
        value={text}
        placeholder={placeholder}
        list={suggestions}
        autoComplete="off"
        {...(exact ? AS_TYPED : {})}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => setText(oneLine(event.currentTarget.value))}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape') setText(value);
        }}
      />
      {hint && (
        <p className="field__hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
