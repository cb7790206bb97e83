import { useEffect, useId, useState } from 'react';
import { LENGTH_INPUT } from '../../editor/tape/length-input.ts';
import { useAppStore } from '../../state/store.ts';
import './fields.css';

type Understood<T> =
  | { readonly ok: true; readonly value: T; readonly echo: string }
  | { readonly ok: false; readonly message: string };

interface Props<T> {
  /** The id of the input, for commands that focus it. */
  readonly id?: string | undefined;
  readonly label: string;
  /** The current value, in words. */
  readonly shown: string;
  readonly read: (text: string) => Understood<T>;
  /** Stores the value. Returns why it was refused, in words; empty or undefined if it was stored. */
  readonly onCommit: (value: T) => string | undefined;
  readonly hint?: string | undefined;
  /** Called when the field gets or loses the focus. */
  readonly onFocus?: ((isIn: boolean) => void) | undefined;
  /** Whether text that a laser tape types here is a length. */
  readonly isLength?: boolean;
  /** Whether all that is typed here is a number of 0 or more: a phone then shows its number pad. */
  readonly isNumber?: boolean;
}

/**
 * A field whose text is parsed. Enter or leaving the field commits it; Escape restores the old value. Refused text stays in the field with
 * the reason beside it, and the plan keeps the old value.
 */
export function TypedField<T>({
  id: given,
  label,
  shown,
  read,
  onCommit,
  hint,
  onFocus,
  isLength = false,
  isNumber = false,
}: Props<T>) {
  const own = useId();
  const id = given ?? own;
  const { text, trouble, echo, setText, commit, putBack } = useTypedText({ shown, read, onCommit });
  const describedBy = [trouble && `${id}-trouble`, hint && `${id}-hint`].filter(Boolean).join(' ');

  return (
    <div className="field" data-refused={trouble ? '' : undefined}>
      <label className="field__label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="field__input"
        {...(isLength ? LENGTH_INPUT : {})}
        value={text ?? shown}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        inputMode={isNumber ? 'decimal' : 'text'}
        aria-invalid={trouble ? true : undefined}
        aria-describedby={describedBy || undefined}
        onFocus={(event) => {
          event.currentTarget.select();
          onFocus?.(true);
        }}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={() => {
          commit();
          onFocus?.(false);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            commit();
            // The next typed text, by hand or by a laser tape, replaces the value. Not a timer, which may fire after the next key.
            const field = event.currentTarget;
            queueMicrotask(() => document.activeElement === field && field.select());
          }
          if (event.key === 'Escape' && text !== null) {
            event.stopPropagation();
            putBack();
          }
        }}
      />
      {echo && !trouble && <span className="field__echo">= {echo}</span>}
      {trouble && (
        <p className="field__trouble" id={`${id}-trouble`} role="alert">
          {trouble} <span className="field__kept">The plan keeps {shown || 'no value'}.</span>
        </p>
      )}
      {hint && !trouble && (
        <p className="field__hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

/** Holds the text while it is typed, its parsed value, and the reason of a refusal. */
function useTypedText<T>({ shown, read, onCommit }: Pick<Props<T>, 'shown' | 'read' | 'onCommit'>) {
  const [text, setText] = useState<string | null>(null);
  const [trouble, setTrouble] = useState('');
  const understood = text === null || text.trim() === shown ? null : read(text);
  const echo = understood?.ok && understood.echo !== text?.trim() ? understood.echo : '';
  const putBack = () => {
    setText(null);
    setTrouble('');
    withdrawMessage(trouble);
  };
  // If another item or an undo shows another value here, text that was typed for the old value must not be committed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another value is shown
  useEffect(putBack, [shown]);
  const plan = useAppStore((state) => state.plan);
  // Another edit of the plan may have removed the cause of a refusal, so the refusal is cleared. The text stays, and Enter tries it again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever the plan is another one
  useEffect(() => setTrouble(''), [plan]);
  const commit = () => {
    if (text === null) return;
    if (!understood) {
      putBack();
      return;
    }
    const refusal = understood.ok ? onCommit(understood.value) : understood.message;
    setTrouble(refusal ?? '');
    if (!refusal) setText(null);
  };
  return { text, trouble, echo, setText, commit, putBack };
}

/** Clears the message line if it repeats a refusal that no longer holds. */
export function withdrawMessage(refusal: string): void {
  const { message, say } = useAppStore.getState();
  if (refusal && message === refusal) say('');
}
