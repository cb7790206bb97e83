import type { Detector, Plan } from '../../../geometry/plan/model.ts';
import { logOf, withLog } from '../../job/log/edit.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { InstantField } from '../fields/instant-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { HandOvers } from './hand-overs.tsx';
import { Photos } from './photos.tsx';

const TAMPERING = [
  { value: 'unknown', words: 'not looked at yet' },
  { value: 'none', words: 'none seen' },
  { value: 'seen', words: 'seen' },
] as const;

/** What happened to each detector, from its serial number to the laboratory. */
export function DetectorLogs({ plan }: { readonly plan: Plan }) {
  const detectors = plan.levels.flatMap((level) => level.detectors);
  return (
    <section aria-labelledby="log-heading">
      <h3 id="log-heading">Log of the detectors</h3>
      {detectors.length === 0 && <p className="small soft">Set a detector first.</p>}
      {detectors.map((detector) => (
        <DetectorLog key={detector.id} plan={plan} detector={detector} />
      ))}
    </section>
  );
}

function DetectorLog({ plan, detector }: { readonly plan: Plan; readonly detector: Detector }) {
  const run = useAppStore((state) => state.run);
  const entry = logOf(plan, detector.id);
  const change = (patch: Partial<typeof entry>) => run((now) => withLog(now, detector.id, patch));
  return (
    <details className="group">
      <summary>
        {detector.label.trim() || detector.id} <span className="soft">{entry.serial.trim() || 'no serial number'}</span>
      </summary>
      <div className="fields">
        <div className="wide">
          <TextField label="Serial number" value={entry.serial} onCommit={(serial) => change({ serial })} />
        </div>
        <TextField label="Set out by" value={entry.placedBy} onCommit={(placedBy) => change({ placedBy })} />
        <TextField label="Fetched by" value={entry.fetchedBy} onCommit={(fetchedBy) => change({ fetchedBy })} />
        <InstantField
          label="Sealed"
          value={entry.sealed}
          zone={plan.site.timeZone}
          hint="At once after the pick-up."
          onCommit={(sealed) => change({ sealed })}
        />
        <div className="wide">
          <ChoiceField
            label="Tampering"
            value={entry.tampering}
            choices={TAMPERING}
            hint="Moved, covered, opened. Seen: the test is not evaluated."
            onCommit={(tampering) => change({ tampering })}
          />
        </div>
        <div className="wide">
          <TextField label="Note" value={entry.note} onCommit={(note) => change({ note })} />
        </div>
      </div>
      <Photos entry={entry} />
      <HandOvers entry={entry} zone={plan.site.timeZone} />
    </details>
  );
}
