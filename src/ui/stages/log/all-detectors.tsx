import { counted, listed } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../../geometry/plan/test-record.ts';
import { allSame, listDetectors, type NamedDetector } from '../../../protocol/custody/detectors.ts';
import { isSentToLaboratory, logEntryOf, withLogEntries } from '../../../protocol/custody/log-entries.ts';
import { whyTamperingWaits } from '../../../protocol/custody/tampering.ts';
import { msOf } from '../../../protocol/timing/clock.ts';
import { formatTimeOfDay } from '../../../protocol/timing/format-time.ts';
import { pickUpNotAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';
import { useMinute } from '../../hooks/use-minute.ts';
import { HandOver } from './hand-overs.tsx';
import { NameField } from './name-field.tsx';

interface Props {
  readonly plan: Plan;
  readonly all: readonly NamedDetector[];
}

/** Entries that are written for all detectors at once, as one step of history. */
export function AllDetectors({ plan, all }: Props) {
  const { run, say } = useAppStore.getState();
  const zone = plan.site.timeZone;
  const entries = all.map(({ id, name }) => ({ ...logEntryOf(plan, id), id, name }));
  const write = (change: Partial<Omit<LogEntry, 'detector'>>, which: readonly NamedDetector[] = all) => {
    const some = which.map(({ id }) => id);
    const refusal = run((now) => withLogEntries(now, some, change));
    if (!refusal) say(`Recorded for ${counted(which.length, 'detector')}. Undo reverts it.`);
    return refusal;
  };
  /** Returns the value of each detector, shown if they differ, before all are replaced. */
  const eachWords = (key: 'placedBy' | 'fetchedBy') =>
    `Not the same: ${listed(entries.map((entry) => `${entry.name} ${entry[key] || 'none'}`))}.`;
  const sealedAlike = allSame(entries.map((entry) => msOf(entry.sealed)));
  const sealing = isSentToLaboratory(plan);
  const unsealed = sealing ? entries.filter((entry) => entry.sealed === null) : [];
  const unseen = entries.filter(({ tampering }) => tampering === 'unknown');
  const end = msOf(plan.visit.end);
  const waits = whyTamperingWaits(plan, useMinute());
  const person = (label: string, key: 'placedBy' | 'fetchedBy') => {
    const alike = allSame(entries.map((entry) => entry[key]));
    const value = alike ? (entries[0]?.[key] ?? '') : '';
    const hint = alike ? {} : { hint: eachWords(key) };
    return <NameField label={label} value={value} {...hint} onCommit={(name) => write({ [key]: name })} />;
  };
  return (
    <fieldset className="log__all">
      <legend className="log__sub">All {all.length} at once</legend>
      <div className="fields">
        {person('All placed by', 'placedBy')}
        {person('All picked up by', 'fetchedBy')}
        {sealing && (
          <InstantField
            label="All sealed"
            value={sealedAlike ? (entries[0]?.sealed ?? null) : null}
            zone={zone}
            hint={sealedAlike ? 'At once after the pick-up.' : 'Not the same for all: see each one.'}
            refuse={pickUpNotAhead(zone)}
            onCommit={(at) => write({ sealed: at })}
          />
        )}
      </div>
      <div className="buttons">
        {end !== null && unsealed.length > 0 && (
          <button type="button" className="button" onClick={() => write({ sealed: plan.visit.end }, unsealed)}>
            {listDetectors(unsealed, all)}: sealed at the pick-up, {formatTimeOfDay(end, zone)}
          </button>
        )}
        {unseen.length > 0 && (
          <button
            type="button"
            className="button"
            disabled={waits !== ''}
            onClick={() => write({ tampering: 'none' }, unseen)}
          >
            {listDetectors(unseen, all)}: no evidence of tampering
          </button>
        )}
      </div>
      {waits && unseen.length > 0 && <p className="small">{waits}</p>}
      <HandOver plan={plan} detectors={all.map(({ id }) => id)} />
    </fieldset>
  );
}
