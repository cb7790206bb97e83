import { saveNow } from '../io/autosave.ts';
import { useSavedSign } from '../io/saved-sign.ts';
import { openFile } from '../panels/file-acts.ts';
import { type NewVersion, useNewVersion } from './new-version.ts';

/** A tab that stays open for days looks for a new version this often. */
const LOOK_AGAIN_MS = 60 * 60 * 1000;

/** Set by the press that starts the new version: only the tab that asked for it loads anew by itself. */
let asked = false;

/** Keeps this version of the app for work without a network, and tells when a newer one is ready. Does nothing where the browser cannot. */
export async function keepApp(): Promise<void> {
  takeFilesFromSystem();
  if (!('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const hadOne = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (hadOne) show({ state: 'runs-elsewhere' });
  });
  try {
    const registration = await serviceWorker.register('./service-worker.js');
    const look = () => {
      const { waiting } = registration;
      if (waiting && serviceWorker.controller) show({ state: 'ready', start: () => startNew(waiting) });
    };
    look();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', look);
    });
    setInterval(() => void registration.update().catch(() => undefined), LOOK_AGAIN_MS);
  } catch {
    // Blocked by the browser's settings, as in some private windows: the app works with the network alone.
  }
}

/** The plan is on its way to the store first; where the store does not take it, the old version goes on. */
async function startNew(waiting: ServiceWorker): Promise<string> {
  await saveNow();
  const { sign } = useSavedSign.getState();
  if (sign.state === 'failed') return 'The plan could not be saved in this browser. Save it as a file first.';
  if (sign.state === 'held') return 'Another tab changed this plan. Choose first which of the two stays.';
  asked = true;
  waiting.postMessage('take-over');
  return '';
}

const show = (version: NewVersion) => useNewVersion.setState({ version });

/** Where the system opens plan files with the installed app, they come in here. */
function takeFilesFromSystem(): void {
  const { launchQueue } = window as unknown as { launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files }) => {
    const [first] = files;
    if (first) void first.getFile().then(openFile);
  });
}

/** Of the File Handling draft of the WICG; not in the DOM types. */
interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files: readonly { getFile(): Promise<File> }[] }) => void): void;
}
