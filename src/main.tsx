import './theme/base.css';
import './theme/forced-colors.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { openFiles, startAddress } from './commands/open-and-save.ts';
import { openLaunchedFiles } from './platform/offline/launched-files.ts';
import { useAppStore } from './state/store.ts';
import { startAutosave } from './storage/autosave.ts';
import { restoreWork } from './storage/restore.ts';
import { readSetting } from './storage/settings.ts';
import { fontsReady } from './theme/fonts.ts';
import { applyTheme, systemTheme } from './theme/theme.ts';
import { THEMES, type ThemeName } from './theme/tokens.ts';
import { loadTheRest } from './ui/hooks/later.tsx';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');

// Until somebody picks colors, those that the system asks for.
useAppStore.getState().setTheme(systemTheme());
applyTheme(useAppStore.getState().theme);

// A canvas text drawn before its font is there keeps the wrong font, so the first draw waits. A font that fails to
// load must not keep the page blank. The plan of last time is laid out before the first draw, so that nothing jumps.
const [, theme, letterKeys, restored] = await Promise.all([
  fontsReady().catch(() => undefined),
  readSetting('theme'),
  readSetting('letterKeys'),
  restoreWork(),
]);
if (isThemeName(theme)) useAppStore.getState().setTheme(theme);
if (letterKeys === false) useAppStore.getState().setLetterKeysAnywhere(false);
if (restored.found === 'unreadable') {
  useAppStore.getState().say('That plan could not be read. It is in Plans and can be saved as a file.');
}
if (restored.found === 'gone') {
  useAppStore.getState().say('The plan of this address is not in this browser. Look in Plans, or open its file.');
}
startAutosave();
startAddress();
openLaunchedFiles(openFiles);

createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

// Well after the first picture, so that keeping the app for later does not hold up the work of now.
if (import.meta.env.PROD)
  setTimeout(() => void import('./ui/shell/register-worker.ts').then(({ registerWorker }) => registerWorker()), 1000);
// A laser tape types when there is something to measure. Without its code its keys are keys, and walls have their first settings.
void import('./commands/after-start.ts').then(
  ({ startDrawing }) => startDrawing(),
  () => undefined,
);
// Until its code is here, direct sun is unknown in every verdict.
void import('./state/direct-sun.ts').then(
  ({ startSun }) => startSun(),
  () => undefined,
);
setTimeout(() => void loadTheRest(), 500);
// What a screen reader is told, and where the focus goes when what had it is gone.
setTimeout(
  () =>
    void import('./ui/announce/start-access.ts').then(
      ({ startAccess }) => startAccess(),
      () => undefined,
    ),
  200,
);
// The second computation runs while nothing is changed. Where its code cannot be loaded, no verdict says that it was computed twice.
setTimeout(
  () =>
    void import('./state/second-opinion-at-rest.ts').then(
      ({ startSecond }) => startSecond(),
      () => undefined,
    ),
  500,
);

function isThemeName(value: unknown): value is ThemeName {
  return typeof value === 'string' && value in THEMES;
}
