import { useId, useState } from 'react';
import { withCondition } from '../../job/conditions/edit.ts';
import type { ConditionRow } from '../../job/conditions/types.ts';
import { msOf, saidInstant } from '../../job/timing/clock.ts';
import { useAppStore } from '../../state/store.ts';
import { InstantField } from '../fields/instant-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { ANSWERS, answerWords } from './state-words.ts';
import { answer } from './walk.ts';

/** One item: a press says that it is kept; opened, what is asked, the other answers, who, when and a note. A break says at once what it means. */
export function ConditionItem({ row }: { readonly row: ConditionRow }) {
  const { item, state, by, at } = row;
  const [open, setOpen] = useState(false);
  const id = useId();
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const time = msOf(at);
  const seen = [by, time === null ? '' : saidInstant(time, zone)].filter(Boolean).join(', ');
  return (
    <li className="condition" data-state={state}>
      <div className="condition__row">
        <button
          type="button"
          className="condition__name"
          aria-expanded={open}
          aria-controls={id}
          onClick={() => setOpen(!open)}
        >
          {item.name}
          <span className="condition__state">{[answerWords(state), seen].filter(Boolean).join(': ')}</span>
        </button>
        <button
          type="button"
          className="button condition__kept"
          aria-pressed={state === 'kept'}
          aria-label={`Kept: ${item.name}`}
          onClick={() => answer(item.id, state === 'kept' ? 'unknown' : 'kept')}
        >
          Kept
        </button>
      </div>
      {state === 'broken' && <p className="condition__means">{row.says}</p>}
      <div id={id} hidden={!open} className="condition__more">
        {open && <ConditionMore row={row} />}
      </div>
    </li>
  );
}

function ConditionMore({ row: { item, state, by, at, note } }: { readonly row: ConditionRow }) {
  const run = useAppStore((app) => app.run);
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const change = (patch: Parameters<typeof withCondition>[2]) => run((plan) => withCondition(plan, item.id, patch));
  return (
    <>
      <p className="small">{item.asks}</p>
      <fieldset className="answers-four">
        <legend className="unseen">{item.name}</legend>
        {ANSWERS.map((each) => (
          <button
            key={each.state}
            type="button"
            className="button"
            aria-pressed={state === each.state}
            onClick={() => answer(item.id, each.state)}
          >
            {each.words}
          </button>
        ))}
      </fieldset>
      <TextField label="Who saw it" value={by} onCommit={(text) => change({ by: text })} />
      <InstantField label="When it was seen" value={at} zone={zone} onCommit={(value) => change({ at: value })} />
      <TextField label="Note" value={note} onCommit={(text) => change({ note: text })} />
      {item.sources.length > 0 && (
        <p className="fine soft">
          {item.sources.map(({ cite, mark }) => (mark === 'secondary' ? `${cite} (second-hand)` : cite)).join('; ')}
        </p>
      )}
    </>
  );
}
