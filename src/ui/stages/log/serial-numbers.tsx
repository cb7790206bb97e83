import type { KeyboardEvent } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { describeDuplicateSerial, type NamedDetector } from '../../../protocol/custody/detectors.ts';
import { logEntryOf, withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { useAppStore } from '../../../state/store.ts';
import { TextField } from '../../fields/text-field.tsx';
import { SerialCamera } from './serial-camera.tsx';

interface Props {
  readonly plan: Plan;
  readonly all: readonly NamedDetector[];
}

/** A field for the serial number of each detector: typed by hand, typed by a scanner, which ends with Enter, or read by the camera. */
export function SerialNumbers({ plan, all }: Props) {
  const run = useAppStore((state) => state.run);
  return (
    <fieldset className="log__serials" onKeyDown={onwards}>
      <legend className="log__sub">Serial numbers</legend>
      {all.map(({ id, name }) => {
        const twice = describeDuplicateSerial(plan, id);
        return (
          <div key={id} className="log__serial" data-detector={id} data-doubt={twice ? '' : undefined}>
            <TextField
              exact
              label={name}
              value={logEntryOf(plan, id).serial}
              {...(twice ? { hint: twice } : {})}
              onCommit={(serial) => run((now) => withLogEntry(now, id, { serial: serial.trim() }))}
            />
            <SerialCamera detector={{ id, name }} />
          </div>
        );
      })}
      {all.length > 1 && <p className="fine soft">Enter goes on to the next one.</p>}
    </fieldset>
  );
}

/**
 * Moves the focus to the next field after Enter, which has committed the number, so that a scanner fills all fields. A number that another
 * field has already keeps the focus, so that the next scan replaces it.
 */
function onwards({ key, target, currentTarget }: KeyboardEvent<HTMLFieldSetElement>): void {
  if (key !== 'Enter' || !(target instanceof HTMLInputElement)) return;
  const { plan, say } = useAppStore.getState();
  const id = target.closest<HTMLElement>('[data-detector]')?.dataset.detector ?? '';
  const twice = describeDuplicateSerial(plan, id);
  const fields = [...currentTarget.querySelectorAll<HTMLInputElement>('input:not([type=file])')];
  const next = twice ? target : fields[fields.indexOf(target) + 1];
  if (twice) say(`${target.labels?.[0]?.textContent ?? ''}: ${twice}`);
  else if (!next) say('That was the last serial number.');
  next?.focus();
  next?.select();
}
