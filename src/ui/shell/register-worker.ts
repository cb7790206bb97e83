import { type NewVersion, useNewVersion } from '../../platform/offline/new-version.ts';
import { saveNow } from '../../storage/autosave.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { restLoaded } from '../hooks/later.tsx';

/** A tab that stays open for days looks for a new version this often. */
const LOOK_AGAIN_MS = 60 * 60 * 1000;

/** The press waits no longer for parts that are being loaded, ms. */
const MOST_FOR_PARTS_MS = 5000;

/** Set by the press that starts the new version: only the tab that asked for it reloads by itself. */
let asked = false;

/** Registers the service worker, which serves this version offline, and announces a newer one. Does nothing where the browser has none. */
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
    // Blocked by the browser's settings, as in some private windows: the app works with the network alone.
  }
}

/** Activates the waiting worker; the page then reloads. */
async function startNew(registration: ServiceWorkerRegistration): Promise<string> {
  const trouble = await savedOrWhyNot();
  if (trouble) return trouble;
  // While the old worker answers requests the new one waits: in Chromium half a minute after the last of them.
  await Promise.race([restLoaded(), new Promise((done) => setTimeout(done, MOST_FOR_PARTS_MS))]);
  asked = true;
  // None waits where another tab was quicker: the new version runs already.
  if (registration.waiting) registration.waiting.postMessage('take-over');
  else location.reload();
  return '';
}

async function loadAnew(): Promise<string> {
  const trouble = await savedOrWhyNot();
  if (!trouble) location.reload();
  return trouble;
}

/** Stores the plan first; where that fails the old version goes on. Returns why, in words; empty when it is stored. */
async function savedOrWhyNot(): Promise<string> {
  const { state } = useLibrary.getState().saveStatus;
  // A stored plan is not written again: other tabs would take it for a change.
  if (state === 'saving' || state === 'failed') await saveNow();
  const { saveStatus } = useLibrary.getState();
  if (saveStatus.state === 'failed') {
    return 'The plan cannot be saved in this browser, so the old Stillspot goes on. Save the plan as a file: the newer one starts when you close this page and come back.';
  }
  if (saveStatus.state === 'held') return 'Another tab changed this plan. Choose first which of the two stays.';
  return '';
}

const show = (version: NewVersion) => useNewVersion.setState({ version });
