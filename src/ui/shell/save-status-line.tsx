import { saveWhole } from '../../commands/open-and-save.ts';
import { deviceZone, formatTimeOfDay } from '../../protocol/timing/format-time.ts';
import { useAppStore } from '../../state/store.ts';
import { saveNow } from '../../storage/autosave.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { takeOther } from '../../storage/restore.ts';

/** Whether the copy in this browser is up to date, and what to do if not. Only the latter is announced. */
export function SaveStatusLine() {
  const status = useLibrary(({ saveStatus }) => saveStatus);
  switch (status.state) {
    case 'resting':
      return <p className="saved" />;
    case 'saving':
      return <p className="saved">saving…</p>;
    case 'saved':
      return <p className="saved">saved {formatTimeOfDay(status.at, deviceZone())}</p>;
    case 'failed':
      return (
        <p className="saved saved--trouble" role="alert">
          could not save: {status.reason}{' '}
          <button type="button" className="text-button" onClick={() => void saveWhole()}>
            Save as a file
          </button>
        </p>
      );
    case 'held':
      return (
        <p className="saved saved--trouble" role="alert">
          Another tab changed this plan at {formatTimeOfDay(status.at, deviceZone())}. Nothing is saved here until you
          choose.{' '}
          <button type="button" className="text-button" onClick={() => void showTheOther()}>
            Show the other plan
          </button>{' '}
          <button type="button" className="text-button" onClick={() => void saveNow(true)}>
            Keep this plan
          </button>
        </p>
      );
  }
}

async function showTheOther(): Promise<void> {
  const { say } = useAppStore.getState();
  const taken = await takeOther();
  say(
    taken
      ? 'This is the plan of the other tab. What was changed here is among its earlier versions.'
      : 'The other plan could not be read. This one stays.',
  );
}
