import { useRef, useState } from 'react';
import { oneLine } from '../../../../geometry/messages/plain-text.ts';
import type { NamedDetector } from '../../../protocol/custody/detectors.ts';
import { describeDuplicateSerial } from '../../../protocol/custody/detectors.ts';
import { logEntryOf, withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { useAppStore } from '../../../state/store.ts';
import { samePlan } from '../../../storage/library-state.ts';
import { later } from '../../hooks/later.tsx';

const SerialScanner = later(() => import('./serial-scanner.tsx').then((part) => part.SerialScanner));

/** A button that opens the camera, to read the serial number of a detector from the bar code of its label. */
export function SerialCamera({ detector: { id, name } }: { readonly detector: NamedDetector }) {
  const [isOpen, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const isSame = useRef<() => boolean>(() => true);
  return (
    <>
      <button
        ref={button}
        type="button"
        className="button"
        aria-label={`Camera: serial number of ${name}`}
        onClick={() => {
          isSame.current = samePlan();
          setOpen(true);
        }}
      >
        Camera
      </button>
      {isOpen && (
        <SerialScanner
          name={name}
          onShut={() => setOpen(false)}
          onSerial={(serial) => isSame.current() && takeSerial(id, name, serial)}
          onType={() => button.current?.closest('[data-detector]')?.querySelector('input')?.focus()}
        />
      )}
    </>
  );
}

/** Writes a scanned number into the log of a detector, and shows the number that it replaces. A code may contain control characters. */
function takeSerial(id: string, name: string, read: string): void {
  const serial = oneLine(read).trim();
  const { plan, run, say } = useAppStore.getState();
  const before = logEntryOf(plan, id).serial.trim();
  if (serial === before) {
    say(`${name}: ${serial}, as it is recorded.`);
    return;
  }
  if (run((now) => withLogEntry(now, id, { serial }))) return;
  const twice = describeDuplicateSerial(useAppStore.getState().plan, id);
  const words = before ? `${name}: ${serial} in place of ${before}.` : `${name}: ${serial}.`;
  say(`${words} ${twice ? `${twice} ` : ''}Undo reverts it.`);
}
