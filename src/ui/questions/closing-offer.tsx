import { describeClosing } from '../../../geometry/messages/index.ts';
import { nearMiss } from '../../../geometry/snap/closing.ts';
import { useAppStore } from '../../state/store.ts';
import { CommandButton } from '../shell/command-button.tsx';

/** By how much the walls that are being drawn miss their start, in words; empty where they do not, or were not meant to meet it. */
export function useMissedStart(): string {
  const corners = useAppStore(({ chain }) => chain.corners);
  const unit = useAppStore((state) => state.plan.display.length);
  const error = nearMiss(corners);
  return error ? describeClosing(error, unit) : '';
}

/** Offers the ways to close the walls. Drawing on dismisses the offer. */
export function ClosingWays() {
  return (
    <>
      <CommandButton command="spread" className="text-button">
        Spread it <kbd className="key">S</kbd>
      </CommandButton>
      <CommandButton command="close-as-it-is" className="text-button">
        Close as it is <kbd className="key">C</kbd>
      </CommandButton>
    </>
  );
}
