import { counted } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../../geometry/plan/test-record.ts';
import { conditionsReport } from '../../../protocol/conditions/conditions-report.ts';
import { describeTimeToSeal } from '../../../protocol/custody/describe-chain.ts';
import { type NamedDetector, namedDetectors } from '../../../protocol/custody/detectors.ts';
import { isSentToLaboratory, logEntryOf, withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { whyTamperingWaits } from '../../../protocol/custody/tampering.ts';
import { pickUpNotAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { useMinute } from '../../hooks/use-minute.ts';
import { AllDetectors } from './all-detectors.tsx';
import { ChainLines } from './chain-lines.tsx';
import { HandOver } from './hand-overs.tsx';
import { NameField, NamesInLog } from './name-field.tsx';
import { Photos } from './photos.tsx';
import { SerialNumbers } from './serial-numbers.tsx';
import { ToLaboratory } from './to-laboratory.tsx';
import './log.css';

const TAMPERING = [
  { value: 'unknown', words: 'not inspected yet' },
  { value: 'none', words: 'none found' },
  { value: 'seen', words: 'found' },
] as const;

/** The log of each detector, from its serial number to the laboratory. */
export function DetectorLogs({ plan }: { readonly plan: Plan }) {
  const all = namedDetectors(plan);
  return (
    <section className="log" aria-labelledby="log-heading">
      <h3 id="log-heading">Log of the detectors</h3>
      {all.length === 0 && <p className="small soft">Place a detector first.</p>}
      {all.length > 0 && (
        <>
          <SerialNumbers plan={plan} all={all} />
          {all.length > 1 && <AllDetectors plan={plan} all={all} />}
          <ToLaboratory plan={plan} />
          {all.map((detector) => (
            <DetectorLog key={detector.id} plan={plan} detector={detector} alone={all.length === 1} />
          ))}
          <NamesInLog plan={plan} />
        </>
      )}
    </section>
  );
}

interface Props {
  readonly plan: Plan;
  readonly detector: NamedDetector;
  /** Whether it is the only detector, whose log is never folded. */
  readonly alone: boolean;
}

function DetectorLog({ plan, detector: { id, name }, alone }: Props) {
  const run = useAppStore((state) => state.run);
  const entry = logEntryOf(plan, id);
  const waits = whyTamperingWaits(plan, useMinute());
  const change = (patch: Partial<typeof entry>) => run((now) => withLogEntry(now, id, patch));
  return (
    <details className="group" open={alone}>
      <summary>
        {name} <span className="soft">{shortOf(entry)}</span>
      </summary>
      <div className="fields">
        <NameField label="Placed by" value={entry.placedBy} onCommit={(placedBy) => change({ placedBy })} />
        <NameField label="Picked up by" value={entry.fetchedBy} onCommit={(fetchedBy) => change({ fetchedBy })} />
        {isSentToLaboratory(plan) && <Sealed plan={plan} entry={entry} onCommit={(sealed) => change({ sealed })} />}
        <div className="wide">
          <ChoiceField
            label="Evidence of tampering"
            value={entry.tampering}
            choices={
              waits && entry.tampering !== 'none' ? TAMPERING.filter(({ value }) => value !== 'none') : TAMPERING
            }
            hint={waits || 'Moved, covered, opened, seal broken.'}
            onCommit={(tampering) => change({ tampering })}
          />
          {entry.tampering === 'seen' && <TamperingMeans plan={plan} />}
        </div>
        <div className="wide">
          <TextField label="Note" value={entry.note} onCommit={(note) => change({ note: note.trim() })} />
        </div>
      </div>
      <Photos entry={entry} name={name} />
      <ChainLines plan={plan} detector={id} name={name} />
      <HandOver plan={plan} detectors={[id]} />
    </details>
  );
}

interface SealedProps {
  readonly plan: Plan;
  readonly entry: LogEntry;
  readonly onCommit: (sealed: string | null) => string;
}

function Sealed({ plan, entry, onCommit }: SealedProps) {
  const after = describeTimeToSeal(plan, entry);
  return (
    <>
      <InstantField
        label="Sealed"
        value={entry.sealed}
        zone={plan.site.timeZone}
        hint="At once after the pick-up."
        refuse={pickUpNotAhead(plan.site.timeZone)}
        onCommit={onCommit}
      />
      {after && <p className="wide small">Sealed: {after}</p>}
    </>
  );
}

/** Returns the summary of a folded log. */
function shortOf({ serial, tampering, photos }: LogEntry): string {
  const parts = [
    serial.trim() || 'no serial number',
    tampering === 'seen' ? 'evidence of tampering' : '',
    photos.length > 0 ? counted(photos.length, 'photo') : '',
  ];
  return parts.filter(Boolean).join(', ');
}

/** The consequence of tampering for the whole test, from the list of conditions. */
function TamperingMeans({ plan }: { readonly plan: Plan }) {
  const row = conditionsReport(plan).rows.find(({ item }) => item.id === 'not-disturbed');
  return (
    <p className="log__doubt" role="status">
      {row?.text}
    </p>
  );
}
