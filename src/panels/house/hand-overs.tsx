import { useState } from 'react';
import type { LogEntry } from '../../../geometry/plan/model.ts';
import { withHandOver, withLog } from '../../job/log/edit.ts';
import { msOf, saidInstant } from '../../job/timing/clock.ts';
import { useAppStore } from '../../state/store.ts';
import { InstantField } from '../fields/instant-field.tsx';
import { TextField } from '../fields/text-field.tsx';

interface Props {
  readonly entry: LogEntry;
  readonly zone: string;
}

/** Whose hands a detector goes through, up to the laboratory. */
export function HandOvers({ entry, zone }: Props) {
  const run = useAppStore((state) => state.run);
  const { detector, custody } = entry;
  const drop = (index: number) =>
    run((plan) => withLog(plan, detector, { custody: custody.filter((_, i) => i !== index) }));
  return (
    <>
      <h4 className="house-sub">From hand to hand</h4>
      <ol className="house-lines">
        {custody.map(({ at, from, to, note }, index) => {
          const time = msOf(at);
          const words = `${from} to ${to}${time === null ? '' : `, ${saidInstant(time, zone)}`}${note ? `. ${note}` : ''}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two hand-overs may have the same words
            <li key={`${words}${index}`} className="house-line">
              {words}{' '}
              <button
                type="button"
                className="text-button"
                aria-label={`Take away: ${words}`}
                onClick={() => drop(index)}
              >
                Take away
              </button>
            </li>
          );
        })}
      </ol>
      <AddHandOver entry={entry} zone={zone} />
    </>
  );
}

function AddHandOver({ entry: { detector, custody, fetchedBy }, zone }: Props) {
  const { run, say } = useAppStore.getState();
  const last = custody.at(-1)?.to ?? fetchedBy;
  const [from, setFrom] = useState<string | null>(null);
  const [to, setTo] = useState('');
  const [at, setAt] = useState<string | null>(null);
  const add = () => {
    const giver = (from ?? last).trim();
    if (!giver || !to.trim()) {
      say('Write down who gave the detector and who took it.');
      return;
    }
    if (run((plan) => withHandOver(plan, detector, { at, from: giver, to: to.trim(), note: '' }))) return;
    setFrom(null);
    setTo('');
    setAt(null);
  };
  return (
    <div className="fields">
      <TextField label="From" value={from ?? last} onCommit={setFrom} />
      <TextField label="To" value={to} placeholder="post, laboratory…" onCommit={setTo} />
      <InstantField
        label="Handed over"
        value={at}
        zone={zone}
        onCommit={(value) => {
          setAt(value);
          return '';
        }}
      />
      <div className="wide">
        <button type="button" className="button" onClick={add}>
          Write it down
        </button>
      </div>
    </div>
  );
}
