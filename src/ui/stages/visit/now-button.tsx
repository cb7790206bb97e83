import { useState } from 'react';
import { type Ms, msOf } from '../../../protocol/timing/clock.ts';
import { formatInstantNear } from '../../../protocol/timing/format-time.ts';
import type { TimeRefusal } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField, Instead, thisMinute } from '../../fields/instant-field.tsx';

interface Props {
  /** "Placed" makes the button "Placed now". */
  readonly name: string;
  /** Name of a time in the future. */
  readonly planned?: string;
  /** Whether the value is only planned, even if its time has passed. */
  readonly isPlanned?: boolean;
  /** Records that it happened at the planned time. */
  readonly onAsPlanned?: (at: Ms) => string;
  /** RFC 3339 with an offset; null: not recorded. */
  readonly value: string | null;
  readonly onNow: (at: Ms) => string;
  /** Stores a typed time. */
  readonly onCommit: (value: string | null) => string;
  readonly hint: string;
  readonly refuse?: TimeRefusal;
  /** Returns a reason to check before this minute is recorded; empty for none. */
  readonly doubt?: (at: Ms) => string;
}

/**
 * A large button that records the current minute. A recorded time is shown, and kept until the user has confirmed that the new one replaces
 * it.
 */
export function NowButton(props: Props) {
  const { name, planned = name, isPlanned = false, value, onNow, onAsPlanned, onCommit, hint, refuse, doubt } = props;
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const [asked, setAsked] = useState<Ms | null>(null);
  /** The refused minute: the refusal is shown as long as it holds. */
  const [refused, setRefused] = useState<Ms | null>(null);
  const at = msOf(value);
  const now = Date.now();
  const refusal = refused === null ? '' : (refuse?.(refused, now) ?? '');
  const isPast = at !== null && at <= now;
  const isDone = isPast && !isPlanned;
  const words = (time: Ms) => formatInstantNear(time, zone, now);
  const press = () => {
    const minute = thisMinute();
    const isRefused = Boolean(refuse?.(minute, Date.now()));
    setRefused(isRefused ? minute : null);
    if (isRefused) return;
    if (at === minute && isDone) useAppStore.getState().say(`${name}: ${words(at)} is recorded already.`);
    else if (at !== null || doubt?.(minute)) setAsked(minute);
    else onNow(minute);
  };
  const answer = (write: boolean) => () => {
    setAsked(null);
    if (write && asked !== null) onNow(asked);
  };
  const why = asked === null ? '' : (doubt?.(asked) ?? '');
  return (
    <div className="visit-act" data-done={isDone ? '' : undefined}>
      <button type="button" className={isDone ? 'button' : 'button button--main'} onClick={press}>
        {name} now
      </button>
      <p className="visit-act__state">{at === null ? hint : `${isDone ? name : planned}: ${words(at)}`}</p>
      {isPast && isPlanned && onAsPlanned && (
        <button type="button" className="button" onClick={() => onAsPlanned(at)}>
          {name} as planned
        </button>
      )}
      {refusal && (
        <p className="field__trouble" role="alert">
          {refusal}
        </p>
      )}
      {asked !== null && at !== null && (
        <Instead
          label={name}
          was={words(at)}
          is={words(asked)}
          planned={!isDone}
          why={why}
          onYes={answer(true)}
          onNo={answer(false)}
        />
      )}
      {asked !== null && at === null && (
        <fieldset className="instant__which">
          <legend className="small" role="alert">
            {why} Record it anyway?
          </legend>
          <button type="button" className="button" aria-label={`${name}: record it anyway`} onClick={answer(true)}>
            Record it
          </button>
          <button type="button" className="button" aria-label={`${name}: not yet`} onClick={answer(false)}>
            Not yet
          </button>
        </fieldset>
      )}
      <details className="group">
        <summary>Another time</summary>
        <InstantField
          label={`${name} at`}
          value={value}
          zone={zone}
          onCommit={onCommit}
          planned={isPlanned ? 'Planned.' : ''}
          {...(refuse ? { refuse } : {})}
        />
      </details>
    </div>
  );
}
