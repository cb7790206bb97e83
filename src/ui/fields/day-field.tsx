import { useEffect, useId, useState } from 'react';
import { instantAt, instantText } from '../../protocol/timing/clock.ts';
import { wallTimeInputValue } from '../../protocol/timing/wall-time-input.ts';
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

/** A day without a known hour: stored as noon by the clock of the site. */
export function DayField({ label, value, zone, onCommit, hint }: Props) {
  const id = useId();
  const shown = wallTimeInputValue(value, zone).slice(0, 10); // the day of it
  const [text, setText] = useState(shown);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    setText(shown);
    setTrouble('');
  }, [shown]);
  const commit = () => {
    if (text === shown) return;
    const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
    const noon = () => instantText(instantAt({ year, month, day, hour: 12, minute: 0 }, zone), zone);
    setTrouble(onCommit(text === '' ? null : noon()) ?? '');
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
