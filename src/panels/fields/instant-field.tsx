import { useEffect, useId, useState } from 'react';
import { instantAt, instantText, msOf, saidInstant, wallTime } from '../../job/timing/clock.ts';
import './fields.css';
import './instant-field.css';

interface Props {
  readonly label: string;
  /** RFC 3339 with an offset; null: not known. */
  readonly value: string | null;
  /** IANA zone of the site: what is typed and shown is its wall clock. */
  readonly zone: string;
  /** Takes the instant over; answers why not, in words, or nothing. */
  readonly onCommit: (value: string | null) => string | undefined;
  readonly hint?: string;
}

/** A day and a minute by the clock of the site. "Now" writes down this minute; the browser's own picker works by finger and by keyboard. */
export function InstantField({ label, value, zone, onCommit, hint }: Props) {
  const id = useId();
  const shown = wallText(value, zone);
  const [text, setText] = useState(shown);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    setText(shown);
    setTrouble('');
  }, [shown]);
  const set = (next: string | null) => setTrouble(onCommit(next) ?? '');
  const commit = () => {
    if (text === shown) return;
    const match = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)/.exec(text);
    if (text === '') set(null);
    else if (!match) setTrouble('A day and a time are needed, like 7 March 2026, 18:00.');
    else {
      const [, year, month, day, hour, minute] = match.map(Number) as [number, number, number, number, number, number];
      set(instantText(instantAt({ year, month, day, hour, minute }, zone), zone));
    }
  };
  const at = msOf(value);
  return (
    <div className="field instant" data-refused={trouble ? '' : undefined}>
      <label className="field__label" htmlFor={id}>
        {label}
      </label>
      <div className="instant__row">
        <input
          id={id}
          type="datetime-local"
          className="field__input"
          value={text}
          aria-describedby={`${id}-said`}
          aria-invalid={trouble !== ''}
          onChange={(event) => setText(event.currentTarget.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') setText(shown);
          }}
        />
        <button
          type="button"
          className="button"
          aria-label={`${label}: now`}
          onClick={() => set(instantText(Math.floor(Date.now() / 60_000) * 60_000, zone))}
        >
          Now
        </button>
      </div>
      <p className={trouble ? 'field__trouble' : 'field__hint'} id={`${id}-said`}>
        {trouble || (at === null ? (hint ?? 'not known') : saidInstant(at, zone))}
      </p>
    </div>
  );
}

/** As the browser's picker writes a wall clock: "2026-03-07T18:00"; empty for none. */
function wallText(value: string | null, zone: string): string {
  const at = msOf(value);
  if (at === null) return '';
  const { year, month, day, hour, minute } = wallTime(at, zone);
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}
