import { useState } from 'react';
import { type Ms, msOf } from '../../../protocol/timing/clock.ts';
import { formatInstant } from '../../../protocol/timing/format-time.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField, Instead, thisMinute } from '../../fields/instant-field.tsx';

interface Props {
  /** "Set out": the button is "Set out now". */
  readonly name: string;
  /** RFC 3339 with an offset; null: not written down. */
  readonly value: string | null;
  readonly onNow: (at: Ms) => string;
  /** Another time than now, typed. */
  readonly onCommit: (value: string | null) => string;
  readonly hint: string;
}

/**
 * A large button that writes down this minute. One that is written down already is shown, and stays until the user has answered whether the
 * new one goes in its place.
 */
export function NowButton({ name, value, onNow, onCommit, hint }: Props) {
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const [asked, setAsked] = useState<Ms | null>(null);
  const at = msOf(value);
  const press = () => {
    const now = thisMinute();
    if (at === null) onNow(now);
    else if (at === now) useAppStore.getState().say(`${name}: ${formatInstant(at, zone)} is recorded already.`);
    else setAsked(now);
  };
  return (
    <div className="visit-act" data-done={at === null ? undefined : ''}>
      <button type="button" className={at === null ? 'button button--main' : 'button'} onClick={press}>
        {name} now
      </button>
      <p className="visit-act__state">{at === null ? hint : `${name}: ${formatInstant(at, zone)}`}</p>
      {asked !== null && at !== null && (
        <Instead
          label={name}
          was={formatInstant(at, zone)}
          is={formatInstant(asked, zone)}
          onYes={() => {
            setAsked(null);
            onNow(asked);
          }}
          onNo={() => setAsked(null)}
        />
      )}
      <details className="group">
        <summary>Another time</summary>
        <InstantField label={`${name} at`} value={value} zone={zone} onCommit={onCommit} />
      </details>
    </div>
  );
}
