import { useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { conditionsReport } from '../../../protocol/conditions/conditions-report.ts';
import { type NamedDetector, namedDetectors } from '../../../protocol/custody/detectors.ts';
import { isSentToLaboratory, logEntryOf, withLogEntries } from '../../../protocol/custody/log-entries.ts';
import { useAppStore } from '../../../state/store.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { ConditionEntry } from '../house/condition-item.tsx';
import { NameField, NamesInLog } from '../log/name-field.tsx';
import { Photos } from '../log/photos.tsx';
import { SerialNumbers } from '../log/serial-numbers.tsx';
import { Parts } from '../parts.tsx';
import { NowButton } from './now-button.tsx';
import { StillAsItWas } from './still-as-it-was.tsx';
import { answerNow, commonName, writeInstant, writeSealed, writeWho } from './visit-actions.ts';
import '../house/house.css';
import '../log/log.css';
import './visit.css';

interface Props {
  readonly plan: Plan;
  readonly all: readonly NamedDetector[];
}

/** The page of the two visits, for one hand at the house: what Time, House and Log hold, in the order in which it is done. */
export function VisitPage() {
  const plan = useAppStore((state) => state.plan);
  const [chosen, setChosen] = useState<'set-out' | 'pick-up' | null>(null);
  const which = chosen ?? (plan.visit.start === null ? 'set-out' : 'pick-up');
  const all = namedDetectors(plan);
  const choice = (value: typeof which, words: string) => (
    <button type="button" className="button" aria-pressed={which === value} onClick={() => setChosen(value)}>
      {words}
    </button>
  );
  return (
    <div className="stage-page__body visit-page">
      <fieldset className="visit-page__which">
        <legend className="unseen">Which visit</legend>
        {choice('set-out', 'Placement')}
        {choice('pick-up', 'Pick-up')}
      </fieldset>
      {all.length === 0 && <p>Place a detector first: its serial number and its photo belong to a place.</p>}
      {which === 'set-out' ? <SettingOut plan={plan} all={all} /> : <PickUp plan={plan} all={all} />}
      <NamesInLog plan={plan} />
      <Cautions />
    </div>
  );
}

function useVisitInstant(key: 'start' | 'end' | 'posted', name: string) {
  const run = useAppStore((state) => state.run);
  const value = useAppStore(({ plan }) => plan.visit[key] ?? null);
  return {
    name,
    value,
    onNow: (at: number) => writeInstant(key, name, at),
    onCommit: (next: string | null) => run((now) => ({ ...now, visit: { ...now.visit, [key]: next } as Visit })),
  };
}

function SettingOut({ plan, all }: Props) {
  const start = useVisitInstant('start', 'Placed');
  return (
    <Parts
      fields={
        <>
          <NowButton
            {...start}
            hint="Press when the detectors are open and in place. They are then locked on the plan."
          />
          {all.length > 0 && <SerialNumbers plan={plan} all={all} />}
          {all.map(({ id, name }) => (
            <section key={id} aria-label={`Photos of ${name}`}>
              <h3>{name}</h3>
              <Photos entry={logEntryOf(plan, id)} name={name} />
            </section>
          ))}
          <Who who="placedBy" label="Placed by" plan={plan} />
        </>
      }
      outcome={<Conditions plan={plan} />}
    />
  );
}

function PickUp({ plan, all }: Props) {
  const run = useAppStore((state) => state.run);
  const end = useVisitInstant('end', 'Picked up');
  const posted = useVisitInstant('posted', 'Mailed');
  const ids = all.map(({ id }) => id);
  const sealed = ids.map((id) => logEntryOf(plan, id).sealed).find((at) => at !== null) ?? null;
  return (
    <Parts
      fields={
        <>
          <StillAsItWas plan={plan} all={all} />
          <Who who="fetchedBy" label="Picked up by" plan={plan} />
          <NowButton {...end} hint="Press when they are closed or picked up: the exposure ends." />
          {isSentToLaboratory(plan) && (
            <>
              {all.length > 0 && (
                <NowButton
                  name="Sealed"
                  value={sealed}
                  onNow={writeSealed}
                  onCommit={(at) => run((now) => withLogEntries(now, ids, { sealed: at }))}
                  hint="At once after the pick-up."
                />
              )}
              <NowButton {...posted} hint="On the same day." />
            </>
          )}
        </>
      }
      outcome={<Conditions plan={plan} />}
    />
  );
}

interface WhoProps {
  readonly who: 'placedBy' | 'fetchedBy';
  readonly label: string;
  readonly plan: Plan;
}

/** Who is at the house: written into the log, and onto each answer below. */
function Who({ who, label, plan }: WhoProps) {
  const walker = useAppStore(({ walk }) => walk.by);
  return (
    <NameField
      label={label}
      value={commonName(plan, who) || walker}
      hint="Recorded in the log, and with the answers about the house."
      onCommit={(name) => writeWho(who, name)}
    />
  );
}

/** The same questions as under House. An answer is that of this minute. */
function Conditions({ plan }: { readonly plan: Plan }) {
  return (
    <section aria-labelledby="visit-conditions">
      <h3 id="visit-conditions">The house now</h3>
      <ul className="conditions">
        {conditionsReport(plan).rows.map((row) => (
          <ConditionEntry key={row.item.id} row={row} onAnswer={answerNow} />
        ))}
      </ul>
    </section>
  );
}
