import { useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { chainOf, holderOf } from '../../../protocol/custody/chain.ts';
import { allSame } from '../../../protocol/custody/detectors.ts';
import { withHandOvers } from '../../../protocol/custody/hand-overs.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { NameField } from './name-field.tsx';

interface Props {
  readonly plan: Plan;
  /** Ids of one detector, or of the whole box, which is handed over as one step. */
  readonly detectors: readonly string[];
}

/** Fields that record a hand-over. The giver is initially the current holder by the log. */
export function HandOver({ plan, detectors }: Props) {
  const { run, say } = useAppStore.getState();
  const [from, setFrom] = useState<string | null>(null);
  const [to, setTo] = useState('');
  const [at, setAt] = useState<string | null>(null);
  const [note, setNote] = useState('');
  const box = detectors.length > 1;
  const holders = detectors.map((id) => holderOf(plan, id));
  const apart = !allSame(holders);
  const holder = apart ? '' : (holders[0] ?? '');
  const add = () => {
    const giver = from ?? holder;
    const missing = [apart || giver ? '' : 'who gave it', to ? '' : 'who took it'].filter(Boolean);
    if (missing.length > 0) {
      say(`Write down ${missing.join(' and ')} first.`);
      return;
    }
    const step = { at, from: giver || null, to, note: note.trim() };
    if (run((now) => withHandOvers(now, detectors, step))) return;
    setFrom(null);
    setTo('');
    setAt(null);
    setNote('');
    const after = useAppStore.getState().plan;
    const doubts = detectors.flatMap((id) => chainOf(after, id).steps.findLast(isLast(after, id))?.discrepancies ?? []);
    const words = box
      ? `According to the log the box is with ${step.to}.`
      : `According to the log it is with ${step.to}.`;
    say(doubts.length > 0 ? `Recorded. Review: ${[...new Set(doubts)].join(' ')}` : words);
  };
  return (
    <details className="group log__hand-over">
      <summary>{box ? 'Transfer the whole box' : 'Transfer it'}</summary>
      <div className="fields">
        <NameField
          label="From"
          value={from ?? holder}
          {...(apart ? { hint: 'Left empty: each from its present holder.' } : {})}
          onCommit={setFrom}
        />
        <NameField label="To" value={to} onCommit={setTo} />
        <InstantField
          label="Transferred"
          value={at}
          zone={plan.site.timeZone}
          refuse={notAhead(plan.site.timeZone)}
          onCommit={(value) => {
            setAt(value);
            return '';
          }}
        />
        <div className="wide">
          <TextField label="Note on the transfer" value={note} onCommit={setNote} />
        </div>
        <div className="wide">
          <button type="button" className="button" onClick={add}>
            Record it
          </button>
        </div>
      </div>
    </details>
  );
}

/** Returns a predicate for the last recorded hand-over of a detector. */
function isLast(plan: Plan, detector: string) {
  const last = (plan.log?.find((entry) => entry.detector === detector)?.custody.length ?? 0) - 1;
  return ({ index }: { readonly index: number | null }) => index === last;
}
