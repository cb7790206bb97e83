import { useRef } from 'react';
import { canReadBarCodes, readBarCode } from '../../../platform/read-bar-code.ts';
import type { NamedDetector } from '../../../protocol/custody/detectors.ts';
import { describeDuplicateSerial } from '../../../protocol/custody/detectors.ts';
import { logEntryOf, withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { useAppStore } from '../../../state/store.ts';
import { samePlan } from '../../../storage/library-state.ts';

const NOT_FOUND = 'No bar code was found in the picture. Hold it flat and near, in good light, or type the number.';

/** Takes a picture of the label of a detector and reads its number from the bar code. Nothing in a browser that reads none. */
export function SerialCamera({ detector: { id, name } }: { readonly detector: NamedDetector }) {
  const picker = useRef<HTMLInputElement>(null);
  if (!canReadBarCodes()) return null;
  return (
    <>
      <button
        type="button"
        className="button"
        aria-label={`Camera: serial number of ${name}`}
        onClick={() => picker.current?.click()}
      >
        Camera
      </button>
      <input
        ref={picker}
        type="file"
        accept="image/*"
        capture="environment"
        className="unseen"
        tabIndex={-1}
        aria-label={`Picture of the label of ${name}`}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = ''; // the same picture can be taken again
          if (file) void takeSerial(id, name, file);
        }}
      />
    </>
  );
}

/** Writes the number on a picture into the log of a detector. The number before it is shown. */
async function takeSerial(id: string, name: string, file: File): Promise<void> {
  const isSame = samePlan();
  const serial = await readBarCode(file);
  const { plan, run, say } = useAppStore.getState();
  // Reading takes a moment: another plan may be open by now.
  if (!isSame()) return;
  const before = logEntryOf(plan, id).serial.trim();
  if (!serial || serial === before) {
    say(serial ? `${name}: ${serial}, as it is recorded.` : NOT_FOUND);
    return;
  }
  if (run((now) => withLogEntry(now, id, { serial }))) return;
  const twice = describeDuplicateSerial(useAppStore.getState().plan, id);
  const words = before ? `${name}: ${serial} in place of ${before}.` : `${name}: ${serial}.`;
  say(`${words} ${twice ? `${twice} ` : ''}Undo reverts it.`);
}
