import './theme/base.css';
import './theme/forced-colors.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { openFiles, startAddress } from './commands/open-and-save.ts';
import { keepPage } from './commands/page-kept.ts';
import { watchForFaults } from './platform/faults.ts';
import { awaitFirstPicture, loadAfterFirstPicture } from './platform/first-picture.ts';
import { openLaunchedFiles } from './platform/offline/launched-files.ts';
import { PART_MISSING } from './platform/part-missing.ts';
import { useAppStore } from './state/store.ts';
import { startAutosave } from './storage/autosave.ts';
import { loadSummaries } from './storage/library/plans.ts';
import { type Restored, restoreWork } from './storage/restore.ts';
import { readSetting } from './storage/settings.ts';
import { fontsReady } from './theme/fonts.ts';
import { applyTheme, systemTheme } from './theme/theme.ts';
import { THEMES, type ThemeName } from './theme/tokens.ts';
import { loadTheRest } from './ui/hooks/later.tsx';
import { GUIDANCE } from './ui/hooks/use-guidance.ts';

const FOUND_IN_WORDS: Partial<Record<Restored['found'], string>> = {
  unreadable: 'That plan could not be read. It is in Plans and can be saved as a file.',
  gone: 'The plan of this address is not in this browser. Look in Plans, or open its file.',
  'no-answer':
    'The storage of this browser does not answer: close other tabs of Stillspot. Plans are kept, and shown when it does.',
};

/** How long the first picture waits for fonts, for the store, which another tab may lock, and for the code of the stages, ms. */
const WAIT_FOR = { fonts: 2500, store: 4000, guidance: 1000 } as const;
const within = <T,>(wanted: Promise<T>, ms: number, fallback: T): Promise<T> =>
  Promise.race([wanted, new Promise<T>((done) => setTimeout(done, ms, fallback))]);

watchForFaults();
awaitFirstPicture();
const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');

// The theme of the system, until the user picks one.
useAppStore.getState().setTheme(systemTheme());
applyTheme(useAppStore.getState().theme);
// A failure is reported as an error event: the page then offers ways out at once and not only after 8 s.
start(root).catch(reportError);

/**
 * Restores the plan of last time and shows the app. This is a function and not the body of the module because WebKit, while a module awaits
 * at its top level, evaluates modules that import it ahead of their other imports.
 */
async function start(root: HTMLElement): Promise<void> {
  // Canvas text that is drawn before its font has loaded keeps the wrong font, so the first draw waits. A font that fails to load must not
  // keep the page blank. The last plan is loaded before the first draw, so that the layout does not jump.
  const restoring = restoreWork();
  // A stored plan shows how its stages stand at once; an empty one, a moment later.
  const judging = restoring.then(({ found }) =>
    found === 'plan' ? within(GUIDANCE.request(), WAIT_FOR.guidance, undefined) : undefined,
  );
  const [theme, letterKeys, restored] = await Promise.all([
    within(readSetting('theme'), WAIT_FOR.store, undefined),
    within(readSetting('letterKeys'), WAIT_FOR.store, undefined),
    within<Restored>(restoring, WAIT_FOR.store, { found: 'no-answer' }),
    within(judging, WAIT_FOR.store, undefined),
    // Fonts that load later cause a redraw (`SheetStage`).
    within(
      fontsReady().catch(() => undefined),
      WAIT_FOR.fonts,
      undefined,
    ),
  ]);
  if (isThemeName(theme)) useAppStore.getState().setTheme(theme);
  if (letterKeys === false) useAppStore.getState().setLetterKeysAnywhere(false);
  tell(restored);
  startAutosave();
  startAddress();
  // The last page belongs to the last plan, which a slow store may return only after the first draw.
  void restoring.then((late) => {
    keepPage(late.found === 'plan');
    if (restored.found === 'no-answer') tell(late);
  });
  openLaunchedFiles(openFiles);

  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );

  // Long after the first picture, so that caching the app for offline use does not delay the user.
  if (import.meta.env.PROD)
    setTimeout(() => void import('./ui/shell/register-worker.ts').then(({ registerWorker }) => registerWorker()), 1000);
  loadAfterFirstPicture(loadWhatComesAfter);
}

/** Loads what the first picture does not need. Rejects if that does not start. */
async function loadWhatComesAfter(): Promise<void> {
  setTimeout(loadTheRest, 500);
  // Announcements for screen readers, the focus after the focused element was removed, and dropped files.
  setTimeout(
    () =>
      void import('./ui/after-picture.ts').then(
        ({ startAfterPicture }) => startAfterPicture(),
        () => undefined,
      ),
    200,
  );
  // The second computation runs while the plan does not change. If its code cannot be loaded, no verdict says that it was computed twice.
  setTimeout(
    () =>
      void import('./state/second-opinion-at-rest.ts').then(
        ({ startSecond }) => startSecond(),
        () => undefined,
      ),
    500,
  );
  await Promise.all([
    // Without this code the keys that a laser tape types are plain key presses, and walls have their default settings.
    import('./commands/after-start.ts').then(
      ({ startDrawing }) => startDrawing(),
      // The note at the pointer and the marks of good places are part of it: the message says why they are missing.
      () => useAppStore.getState().say(PART_MISSING),
    ),
    // Until this code has loaded, direct sun is unknown in every verdict.
    import('./state/direct-sun.ts').then(
      ({ startSun }) => startSun(),
      () => undefined,
    ),
    GUIDANCE.request(),
    loadSummaries(),
  ]);
}

/** Shows a message if the plan is unreadable or missing, or if the store did not answer; otherwise clears the message. */
function tell({ found }: Restored): void {
  useAppStore.getState().say(FOUND_IN_WORDS[found] ?? '');
}

function isThemeName(value: unknown): value is ThemeName {
  return typeof value === 'string' && value in THEMES;
}
