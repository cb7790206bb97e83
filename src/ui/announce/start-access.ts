import { startAnnouncer } from './announcer.ts';
import { startFocusGuard } from './focus-guard.ts';
import { startUndoWords } from './undo-words.ts';

/** Starts what a keyboard and a screen reader need beside the page itself: loaded after it, or, on a busy machine, before it is drawn. */
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
