import { describeClosing } from '../../../geometry/messages/index.ts';
import { nearMiss } from '../../../geometry/snap/closing.ts';
import { useAppStore } from '../../state/store.ts';
import { CommandButton } from '../shell/command-button.tsx';

/** Returns in words by how much the run of walls misses its start; empty if it does not, or is too far off to be meant to close. */
export function useMissedStart(): string {
  const corners = useAppStore(({ chain }) => chain.corners);
  const unit = useAppStore((state) => state.plan.display.length);
  const error = nearMiss(corners);
  return error ? describeClosing(error, unit) : '';
}

/** The ways to close the run of walls. Drawing another wall dismisses them. */
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
