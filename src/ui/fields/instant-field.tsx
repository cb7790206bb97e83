import { type ReactNode, useEffect, useId, useState } from 'react';
import { instantText, MINUTE, type Ms, msOf } from '../../protocol/timing/clock.ts';
import { formatInstantNear } from '../../protocol/timing/format-time.ts';
import type { TimeRefusal } from '../../protocol/timing/refused-times.ts';
import {
  INPUT_RANGE,
  INSTANT_NEEDED,
  parseWallTime,
  type WallTimeInput,
  wallTimeInputValue,
} from '../../protocol/timing/wall-time-input.ts';
import { useTypedSaved } from '../hooks/use-typed-saved.ts';
import { withdrawMessage } from './typed-field.tsx';
import './fields.css';
import './instant-field.css';

interface Props {
  readonly label: string;
  /** RFC 3339 with an offset; null: not known. */
  readonly value: string | null;
  /** IANA zone of the site: times are typed and shown in its local time. */
  readonly zone: string;
  /** Stores the instant. Returns why it was refused, in words; empty or undefined if it was stored. */
  readonly onCommit: (value: string | null) => string | undefined;
  readonly hint?: string;
  /** Text after an instant that is only planned; empty for a recorded one. */
  readonly planned?: string;
  /** Whether the instant is planned: the field has no "Now" button. */
  readonly ahead?: boolean;
  /** Returns why an instant is refused, before it is stored in the plan. */
  readonly refuse?: TimeRefusal;
  /** Whether the value is shown but cannot be changed. */
  readonly readOnly?: boolean;
}

/**
 * A field for a day and a minute by the clock of the site. "Now" enters the current minute; the native picker works by touch and keyboard.
 * A minute that the clock shows twice is stored only after the user has chosen which one; a minute that the clock skips is refused.
 */
export function InstantField({
  label,
  value,
  zone,
  onCommit,
  hint,
  planned = '',
  ahead = false,
  refuse,
  readOnly,
}: Props) {
  const id = useId();
  const { text, trouble, instead, read, shown, setText, setInstead, set, commit } = useInstantText({
    value,
    zone,
    onCommit,
    refuse,
  });
  const at = msOf(value);
  const now = Date.now();
  const known =
    at === null ? (hint ?? 'not known') : [formatInstantNear(at, zone, now), planned].filter(Boolean).join('. ');
  const asks = read.kind === 'twice' && text !== shown;
  return (
    <div className="field instant" data-refused={trouble || asks ? '' : undefined}>
      <div className="instant__head">
        <label className="field__label" htmlFor={id}>
          {label}
        </label>
        {!ahead && <Now label={label} onNow={(minute) => (value === null ? set(minute) : setInstead(minute))} />}
      </div>
      <input
        id={id}
        type="datetime-local"
        className="field__input"
        value={text}
        readOnly={readOnly}
        {...INPUT_RANGE}
        aria-describedby={`${id}-note`}
        aria-invalid={trouble !== '' || asks}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={(event) => commit(event.currentTarget)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit(event.currentTarget);
          if (event.key === 'Escape') setText(shown);
        }}
      />
      <FieldNote id={`${id}-note`} trouble={trouble}>
        {asks ? 'Not recorded yet.' : known}
      </FieldNote>
      {instead !== null && at !== null && (
        <Instead
          label={label}
          was={formatInstantNear(at, zone, now)}
          is={formatInstantNear(instead, zone, now)}
          planned={at > now || planned !== ''}
          onYes={() => {
            setInstead(null);
            set(instead);
          }}
          onNo={() => setInstead(null)}
        />
      )}
      {read.kind === 'twice' && <WhichOne label={label} read={read} chosen={asks ? null : at} onChoose={set} />}
    </div>
  );
}

interface Entry extends Pick<Props, 'value' | 'zone' | 'onCommit'> {
  readonly refuse: TimeRefusal | undefined;
}

/** Holds the text while it is typed, its parsed value, and the reason of a refusal. */
function useInstantText({ value, zone, onCommit, refuse }: Entry) {
  const shown = wallTimeInputValue(value, zone);
  const [text, setTyped] = useState(shown);
  const [trouble, setTrouble] = useState('');
  /** The instant that `refuse` did not accept. */
  const [refused, setRefused] = useState<Ms | null>(null);
  /** The minute with which "Now" would replace a stored instant: the user is asked first. */
  const [instead, setInstead] = useState<Ms | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: of two instants that look alike the other one is a new value too
  useEffect(() => {
    setTyped(shown);
    setTrouble('');
    setRefused(null);
    setInstead(null);
  }, [shown, value]);
  const setText = (next: string) => {
    setTyped(next);
    setTrouble('');
    setRefused(null);
    withdrawMessage(trouble);
  };
  const set = (next: Ms | null) => {
    const isRefused = next !== null && Boolean(refuse?.(next, Date.now()));
    setRefused(isRefused ? next : null);
    setTrouble(isRefused ? '' : (onCommit(next === null ? null : instantText(next, zone)) ?? ''));
  };
  // The refusal is shown until its cause is gone, and not removed earlier: removing it moves the fields below.
  const refusal = refused === null ? '' : (refuse?.(refused, Date.now()) ?? '');
  const read = parseWallTime(text, zone);
  const commit = (input: HTMLInputElement) => {
    // A partly typed date must not be treated as an empty field, which would delete the stored value.
    if (input.validity.badInput) setTrouble(INSTANT_NEEDED);
    else if (text === shown) setText(shown);
    else if (read.kind === 'refused') setTrouble(read.message);
    else if (read.kind === 'twice') setTrouble('');
    else set(read.kind === 'empty' ? null : read.at);
  };
  const isWhole = text !== shown && read.kind === 'instant';
  useTypedSaved(isWhole ? text : null, () => read.kind === 'instant' && set(read.at));
  return { text, trouble: trouble || refusal, instead, read, shown, setText, setInstead, set, commit };
}

/** Returns the start of the current minute, ms since 1970. */
export const thisMinute = (): Ms => Math.floor(Date.now() / MINUTE) * MINUTE;

/** The button that enters the current minute. */
function Now({ label, onNow }: { readonly label: string; readonly onNow: (now: Ms) => void }) {
  return (
    <button
      type="button"
      className="button instant__now"
      aria-label={`${label}: now`}
      onClick={() => onNow(thisMinute())}
    >
      Now
    </button>
  );
}

interface InsteadProps {
  readonly label: string;
  readonly was: string;
  readonly is: string;
  /** Whether the stored instant is only planned. */
  readonly planned: boolean;
  /** A reason to check first. */
  readonly why?: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
}

/** Asks before "now" replaces a stored instant. */
export function Instead({ label, was, is, planned, why, onYes, onNo }: InsteadProps) {
  return (
    <fieldset className="instant__which">
      <legend className="small" role="alert">
        {why} {was} is {planned ? 'planned' : 'recorded'}. Write {is} in its place?
      </legend>
      <button type="button" className="button" aria-label={`${label}: write now in its place`} onClick={onYes}>
        Write now
      </button>
      <button
        type="button"
        className="button"
        aria-label={`${label}: keep what is ${planned ? 'planned' : 'recorded'}`}
        onClick={onNo}
      >
        Keep
      </button>
    </fieldset>
  );
}

function FieldNote({
  id,
  trouble,
  children,
}: {
  readonly id: string;
  readonly trouble: string;
  readonly children: ReactNode;
}) {
  return (
    <p className={trouble ? 'field__trouble' : 'field__hint'} id={id} role={trouble ? 'alert' : undefined}>
      {trouble || children}
    </p>
  );
}

interface WhichOneProps {
  readonly label: string;
  readonly read: Extract<WallTimeInput, { kind: 'twice' }>;
  /** The stored instant; null for none. */
  readonly chosen: Ms | null;
  readonly onChoose: (at: Ms) => void;
}

/** Asks which of two equal minutes was meant, if the clock shows the minute twice. */
function WhichOne({ label, read, chosen, onChoose }: WhichOneProps) {
  return (
    <fieldset className="instant__which">
      <legend className="small" role={chosen === null ? 'alert' : undefined}>
        {read.question}
      </legend>
      {read.choices.map(({ at, words }) => {
        // The stored instant may have seconds.
        const pressed = chosen !== null && Math.floor(chosen / MINUTE) * MINUTE === at;
        return (
          <button
            key={at}
            type="button"
            className="button"
            aria-pressed={pressed}
            aria-label={`${label}: ${words}`}
            onClick={() => onChoose(at)}
          >
            {words}
          </button>
        );
      })}
    </fieldset>
  );
}
