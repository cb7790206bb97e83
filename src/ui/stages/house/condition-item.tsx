import { useId, useRef, useState } from 'react';
import { describeSources } from '../../../../geometry/messages/sources.ts';
import type { ConditionState } from '../../../../geometry/plan/test-record.ts';
import type { ConditionRow } from '../../../protocol/conditions/condition-row.ts';
import { conditionTexts } from '../../../protocol/conditions/condition-texts.ts';
import { describeDeviation } from '../../../protocol/conditions/conditions-report.ts';
import { withCondition } from '../../../protocol/conditions/edit-conditions.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';
import { ANSWERS, answerLine, furtherLine, markOf } from './state-words.ts';
import { answer } from './walk.ts';

interface EntryProps {
  readonly row: ConditionRow;
  /** Records the answer; if left out, it is recorded with name and time of the walk. */
  readonly onAnswer?: (id: string, state: ConditionState) => void;
}

/** A condition with its answers. A broken one shows the consequence; unfolded, it shows the question, name, time, note and sources. */
export function ConditionEntry({ row, onAnswer = answer }: EntryProps) {
  const { item, state, answered, canBeAbsent, further, text, drawnItems } = row;
  const [open, setOpen] = useState(false);
  const id = useId();
  const name = useRef<HTMLButtonElement>(null);
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const mark = markOf(row);
  const doubtful = state === 'unknown' && answered !== 'unknown';
  return (
    <li className="condition" data-state={state}>
      <button
        ref={name}
        type="button"
        className="condition__name"
        aria-expanded={open}
        aria-controls={`${id}-more`}
        onClick={() => setOpen(!open)}
      >
        {item.name}
      </button>
      <p className="condition__state">
        {mark && <VerdictMark verdict={mark} size={16} />}
        {answerLine(row, zone)}
      </p>
      {further.map((each) => (
        <p key={`${each.state} ${each.at}`} className="condition__state">
          {furtherLine(each, zone)}
        </p>
      ))}
      {drawnItems && <p className="condition__means">{drawnItems}</p>}
      {(state === 'broken' || doubtful) && <p className="condition__means">{text}</p>}
      <fieldset className="condition__answers">
        <legend className="unseen">{item.name}</legend>
        {ANSWERS.filter((each) => canBeAbsent || each.state !== 'not-applicable').map((each) => (
          <button
            key={each.state}
            type="button"
            className="button"
            aria-pressed={answered === each.state}
            onClick={() => onAnswer(item.id, each.state)}
          >
            {each.words}
          </button>
        ))}
      </fieldset>
      <div id={`${id}-more`} hidden={!open} className="condition__more">
        {open && <ConditionMore row={row} onBack={() => name.current?.focus()} />}
      </div>
    </li>
  );
}

interface MoreProps {
  readonly row: ConditionRow;
  /** Withdrawing the answer removes its button, so the focus needs another place. */
  readonly onBack: () => void;
}

function ConditionMore({ row: { item, state, answered, by, at, note }, onBack }: MoreProps) {
  const run = useAppStore((app) => app.run);
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const { requirement, conflict, sources } = conditionTexts(item);
  const change = (patch: Parameters<typeof withCondition>[2]) => run((plan) => withCondition(plan, item.id, patch));
  return (
    <>
      <p>{requirement}</p>
      {state !== 'broken' && (
        <p>
          <strong>If not met:</strong> {describeDeviation(item)}
        </p>
      )}
      {conflict && <p>Texts differ: {conflict}</p>}
      <p className="small soft">{sources.length > 0 ? `Source: ${describeSources(sources)}` : 'No source.'}</p>
      {answered !== 'unknown' && state === answered && (
        <>
          <TextField label="Verified by" value={by} onCommit={(text) => change({ by: text })} />
          <InstantField
            label="Verified on"
            value={at}
            zone={zone}
            refuse={notAhead(zone)}
            onCommit={(value) => change({ at: value })}
          />
        </>
      )}
      <TextField label="Note" value={note} onCommit={(text) => change({ note: text })} />
      {answered !== 'unknown' && (
        <button
          type="button"
          className="button"
          onClick={() => {
            answer(item.id, 'unknown');
            onBack();
          }}
        >
          Clear the answer
        </button>
      )}
    </>
  );
}
