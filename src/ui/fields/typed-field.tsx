import { useEffect, useId, useState } from 'react';
import { LENGTH_INPUT } from '../../editor/tape/length-input.ts';
import { useAppStore } from '../../state/store.ts';
import './fields.css';

type Understood<T> =
  | { readonly ok: true; readonly value: T; readonly echo: string }
  | { readonly ok: false; readonly message: string };

interface Props<T> {
  /** The id of the input, for what leads the keyboard there. */
  readonly id?: string | undefined;
  readonly label: string;
  /** The current value, in words. */
  readonly shown: string;
  readonly read: (text: string) => Understood<T>;
  /** Takes the value over. Returns why not, in words; empty or nothing when it did. */
  readonly onCommit: (value: T) => string | undefined;
  readonly hint?: string | undefined;
  /** Called when the keyboard comes into the field, and when it leaves it. */
  readonly onFocus?: ((isIn: boolean) => void) | undefined;
  /** What a laser tape types here is a length. */
  readonly isLength?: boolean;
}

/**
 * A field whose text is parsed. Enter or leaving the field commits it; Escape restores the old value. Refused text
 * stays in the field with the reason beside it, and the plan keeps the old value.
 */
export function TypedField<T>({ id: given, label, shown, read, onCommit, hint, onFocus, isLength = false }: Props<T>) {
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
        inputMode="text"
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
            // What is typed next, by hand or by a laser tape, is another value. A timer may be later than the next key.
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

/** The text of the field while it is typed, what was understood of it, and why it was refused. */
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
  // Another item, or an undo, shows another value here: text that was half typed for the old one must not be committed to it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another value is shown
  useEffect(putBack, [shown]);
  const plan = useAppStore((state) => state.plan);
  // A refusal goes when its cause may have gone: another edit has changed the plan. The text stays, and Enter tries it again.
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

/** Takes a refusal back that the message line repeats: it no longer holds. */
export function withdrawMessage(refusal: string): void {
  const { message, say } = useAppStore.getState();
  if (refusal && message === refusal) say('');
}
