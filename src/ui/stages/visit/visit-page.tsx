import { useLayoutEffect, useState } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { usePanels } from '../../../commands/panels.ts';
import { conditionsReport } from '../../../protocol/conditions/conditions-report.ts';
import { whyAnswersWait } from '../../../protocol/conditions/early-answers.ts';
import { type NamedDetector, namedDetectors } from '../../../protocol/custody/detectors.ts';
import { isSentToLaboratory, logEntryOf, withLogEntries } from '../../../protocol/custody/log-entries.ts';
import { plannedStart, withVisitStart } from '../../../protocol/custody/placed.ts';
import { whyTamperingWaits } from '../../../protocol/custody/tampering.ts';
import { type Ms, msOf } from '../../../protocol/timing/clock.ts';
import { earliestPickUp, earlyPickUpQuestion } from '../../../protocol/timing/early-pick-up.ts';
import { pickedUpRefusal, pickUpNotAhead, placedRefusal } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { useMinute } from '../../hooks/use-minute.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { ConditionEntry } from '../house/condition-item.tsx';
import { NameField, NamesInLog } from '../log/name-field.tsx';
import { Photos } from '../log/photos.tsx';
import { SerialNumbers } from '../log/serial-numbers.tsx';
import { Parts } from '../parts.tsx';
import { ClosedSinceField } from '../time/closed-since-field.tsx';
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

type Which = 'set-out' | 'pick-up';
interface Shown {
  readonly which: Which;
  /** When the user chose it or recorded its placement, ms since 1970; null: neither. */
  readonly chosenAt: Ms | null;
}

/** Returns the visit to show when the page is opened: the chosen one, unless it is a placement chosen before the earliest pick-up, now past. */
function visitToShow(plan: Plan, before: Shown | null, now: Ms): Shown {
  const earliest = earliestPickUp(plan);
  const chosenAt = before?.chosenAt ?? null;
  const isOver = before?.which === 'set-out' && earliest !== null && earliest <= now && (chosenAt ?? 0) < earliest;
  if (before && chosenAt !== null && !isOver) return before;
  const isOpen = plan.visit.start === null || plannedStart(plan, now) !== null;
  return { which: isOpen ? 'set-out' : 'pick-up', chosenAt: null };
}

/** The page of the two visits, for use with one hand at the house: fields of Time, House and Log in the order of the work. */
export function VisitPage() {
  const plan = useAppStore((state) => state.plan);
  const now = useMinute();
  const [shown, setShown] = useState<Shown>(() => visitToShow(plan, null, now));
  const { which } = shown;
  const isOpen = usePanels((ui) => ui.visitOpen);
  // Chosen when the page is opened, or by a press, so that it never changes under a finger.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when it is opened
  useLayoutEffect(() => {
    if (isOpen) setShown(visitToShow(plan, shown, Date.now()));
  }, [isOpen]);
  const all = namedDetectors(plan);
  const choose = (value: Which) => setShown({ which: value, chosenAt: Date.now() });
  const choice = (value: Which, words: string) => (
    <button type="button" className="button" aria-pressed={which === value} onClick={() => choose(value)}>
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
      {which === 'set-out' ? (
        <SettingOut plan={plan} all={all} onPlaced={() => choose('set-out')} />
      ) : (
        <PickUp plan={plan} all={all} now={now} />
      )}
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
    onCommit: (next: string | null) =>
      run((now) => ({
        ...now,
        visit:
          key === 'start' ? withVisitStart(now.visit, next, isAhead(next)) : ({ ...now.visit, [key]: next } as Visit),
      })),
  };
}

const isAhead = (at: string | null): boolean => (msOf(at) ?? 0) > Date.now();

/** The fields of the placement. `onPlaced` is called after the placement was recorded or withdrawn. */
function SettingOut({ plan, all, onPlaced }: Props & { readonly onPlaced: () => void }) {
  const run = useAppStore((state) => state.run);
  const start = useVisitInstant('start', 'Placed');
  const { visit, site } = plan;
  // The page stays on the placement, because serial numbers, photos and the house follow.
  const stay = (refusal: string) => {
    if (!refusal) onPlaced();
    return refusal;
  };
  return (
    <Parts
      fields={
        <>
          <ClosedSinceField
            visit={visit}
            zone={site.timeZone}
            onCommit={(closedSince) => run((now) => ({ ...now, visit: { ...now.visit, closedSince } }))}
          />
          <NowButton
            {...start}
            onNow={(at) => stay(start.onNow(at))}
            onCommit={(next) => stay(start.onCommit(next))}
            refuse={placedRefusal(visit, site.timeZone)}
            planned="Placement planned"
            isPlanned={visit.startPlanned === true}
            onAsPlanned={(at) => stay(start.onNow(at))}
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

function PickUp({ plan, all, now: minute }: Props & { readonly now: Ms }) {
  const run = useAppStore((state) => state.run);
  const end = useVisitInstant('end', 'Picked up');
  const posted = useVisitInstant('posted', 'Mailed');
  const zone = plan.site.timeZone;
  const ids = all.map(({ id }) => id);
  const sealed = ids.map((id) => logEntryOf(plan, id).sealed).find((at) => at !== null) ?? null;
  return (
    <Parts
      fields={
        <>
          <Who who="fetchedBy" label="Picked up by" plan={plan} />
          <NowButton
            {...end}
            refuse={pickedUpRefusal(plan.visit, zone)}
            doubt={(at) => earlyPickUpQuestion(plan, at)}
            hint="Press when they are closed or picked up: the exposure ends."
          />
          <StillAsItWas plan={plan} all={all} waits={whyTamperingWaits(plan, minute)} />
          {isSentToLaboratory(plan) && (
            <>
              {all.length > 0 && (
                <NowButton
                  name="Sealed"
                  value={sealed}
                  onNow={writeSealed}
                  refuse={pickUpNotAhead(zone)}
                  onCommit={(at) => run((now) => withLogEntries(now, ids, { sealed: at }))}
                  hint="At once after the pick-up."
                />
              )}
              <NowButton {...posted} refuse={pickUpNotAhead(zone)} hint="On the same day." />
            </>
          )}
        </>
      }
      outcome={<Conditions plan={plan} waits={whyAnswersWait(plan, minute)} />}
    />
  );
}

interface WhoProps {
  readonly who: 'placedBy' | 'fetchedBy';
  readonly label: string;
  readonly plan: Plan;
}

/** A field for who is at the house: stored in the log, and with each answer below. */
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

/** The same conditions as under House, answered as of the current minute. `waits`: why it is too early for that; empty if it is not. */
function Conditions({ plan, waits = '' }: { readonly plan: Plan; readonly waits?: string }) {
  return (
    <section aria-labelledby="visit-conditions">
      <h3 id="visit-conditions">The house now</h3>
      {waits && <p>{waits}</p>}
      <ul className="conditions">
        {conditionsReport(plan).rows.map((row) => (
          <ConditionEntry key={row.item.id} row={row} onAnswer={answerNow} />
        ))}
      </ul>
    </section>
  );
}
