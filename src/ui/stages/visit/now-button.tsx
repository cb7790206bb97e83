import { useState } from 'react';
import { type Ms, msOf } from '../../../protocol/timing/clock.ts';
import { formatInstantNear } from '../../../protocol/timing/format-time.ts';
import type { TimeRefusal } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField, Instead, thisMinute } from '../../fields/instant-field.tsx';

interface Props {
  /** "Set out": the button is "Set out now". */
  readonly name: string;
  /** What a time that lies ahead is called. */
  readonly planned?: string;
  /** Whether the value is only planned, also once its time has passed. */
  readonly isPlanned?: boolean;
  /** Writes down that it happened at the planned time. */
  readonly onAsPlanned?: (at: Ms) => string;
  /** RFC 3339 with an offset; null: not written down. */
  readonly value: string | null;
  readonly onNow: (at: Ms) => string;
  /** Another time than now, typed. */
  readonly onCommit: (value: string | null) => string;
  readonly hint: string;
  readonly refuse?: TimeRefusal;
  /** Returns what to think of before this minute is written down; empty for nothing. */
  readonly doubt?: (at: Ms) => string;
}

/**
 * A large button that writes down this minute. One that is written down already is shown, and stays until the user has answered whether the
 * new one goes in its place.
 */
export function NowButton(props: Props) {
  const { name, planned = name, isPlanned = false, value, onNow, onAsPlanned, onCommit, hint, refuse, doubt } = props;
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const [asked, setAsked] = useState<Ms | null>(null);
  /** The minute that was refused: it is told for as long as that holds. */
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
