import { useEffect, useId, useState } from 'react';
import { instantText } from '../../protocol/timing/clock.ts';
import { INPUT_RANGE, parseWallTime, wallTimeInputValue } from '../../protocol/timing/wall-time-input.ts';
import './fields.css';

interface Props {
  readonly label: string;
  /** RFC 3339 with an offset; null: not known. */
  readonly value: string | null;
  /** IANA zone of the site. */
  readonly zone: string;
  readonly onCommit: (value: string | null) => string | undefined;
  readonly hint?: string;
}

/** A field for a day without a time: stored as noon by the clock of the site. */
export function DayField({ label, value, zone, onCommit, hint }: Props) {
  const id = useId();
  const shown = wallTimeInputValue(value, zone).slice(0, 10); // the date part
  const [text, setText] = useState(shown);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    setText(shown);
    setTrouble('');
  }, [shown]);
  const commit = () => {
    if (text === shown) return;
    const read = parseWallTime(text && `${text}T12:00`, zone);
    if (read.kind === 'refused') setTrouble(read.message);
    else if (read.kind === 'empty') setTrouble(onCommit(null) ?? '');
    // If a clock shows noon twice, both are on the same day, so the first is used.
    else setTrouble(onCommit(instantText(read.kind === 'instant' ? read.at : (read.choices[0]?.at ?? 0), zone)) ?? '');
  };
  return (
    <div className="field" data-refused={trouble ? '' : undefined}>
      <label className="field__label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="date"
        className="field__input"
        value={text}
        min={INPUT_RANGE.min.slice(0, 10)}
        max={INPUT_RANGE.max.slice(0, 10)}
        aria-describedby={`${id}-note`}
        aria-invalid={trouble !== ''}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape') setText(shown);
        }}
      />
      <p className={trouble ? 'field__trouble' : 'field__hint'} id={`${id}-note`}>
        {trouble || hint}
      </p>
    </div>
  );
}
