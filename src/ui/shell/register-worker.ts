import { type NewVersion, useNewVersion } from '../../platform/offline/new-version.ts';
import { saveNow } from '../../storage/autosave.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { restLoaded } from '../hooks/later.tsx';

/** Interval at which a tab that stays open looks for a new version, ms. */
const LOOK_AGAIN_MS = 60 * 60 * 1000;

/** Maximum time that starting the new version waits for parts that are being loaded, ms. */
const MOST_FOR_PARTS_MS = 5000;

/** Whether the user has started the new version in this tab: only that tab reloads automatically. */
let asked = false;

/** Registers the service worker, which serves this version offline, and announces a newer one. Does nothing if the browser has none. */
export async function registerWorker(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const hadOne = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (hadOne) show({ state: 'runs-elsewhere', start: loadAnew });
  });
  try {
    const registration = await serviceWorker.register('./service-worker.js', { updateViaCache: 'none' });
    const look = () => {
      if (registration.waiting && serviceWorker.controller)
        show({ state: 'ready', start: () => startNew(registration) });
    };
    look();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', look);
    });
    setInterval(() => void registration.update().catch(() => undefined), LOOK_AGAIN_MS);
  } catch {
    // Blocked by the browser's settings, as in some private windows: the app then needs the network.
  }
}

/** Activates the waiting worker; the page then reloads. Resolves to why it cannot, in words; empty if it does. */
async function startNew(registration: ServiceWorkerRegistration): Promise<string> {
  const trouble = await savedOrWhyNot();
  if (trouble) return trouble;
  // The new worker waits while the old one answers requests: in Chromium for half a minute after the last request.
  await Promise.race([restLoaded(), new Promise((done) => setTimeout(done, MOST_FOR_PARTS_MS))]);
  asked = true;
  // If another tab was quicker, no worker waits: the new version already runs.
  if (registration.waiting) registration.waiting.postMessage('take-over');
  else location.reload();
  return '';
}

async function loadAnew(): Promise<string> {
  const trouble = await savedOrWhyNot();
  if (!trouble) location.reload();
  return trouble;
}

/** Stores the plan. Returns why that failed, in words; empty if it is stored. If it fails, the old version keeps running. */
async function savedOrWhyNot(): Promise<string> {
  const { state } = useLibrary.getState().saveStatus;
  // A stored plan is not written again: other tabs would treat it as a change.
  if (state === 'saving' || state === 'failed') await saveNow();
  const { saveStatus } = useLibrary.getState();
  if (saveStatus.state === 'failed') {
    return 'The plan cannot be saved in this browser, so the old Stillspot goes on. Save the plan as a file: the newer one starts when you close this page and come back.';
  }
  if (saveStatus.state === 'held') return 'Another tab changed this plan. Choose first which of the two stays.';
  return '';
}

const show = (version: NewVersion) => useNewVersion.setState({ version });
