import { startAnnouncer } from './announcer.ts';
import { startFocusGuard } from './focus-guard.ts';
import { startUndoWords } from './undo-words.ts';

/** Starts the additions for keyboards and screen readers. Waits for the page, which on a busy machine may be drawn later than this is loaded. */
export function startAccess(): void {
  const region = document.getElementById('announcer');
  if (!region) {
    requestAnimationFrame(startAccess);
    return;
  }
  startAnnouncer(region);
  startUndoWords();
  startFocusGuard();
}
