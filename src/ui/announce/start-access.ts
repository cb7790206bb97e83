import { startAnnouncer } from './announcer.ts';
import { startFocusGuard } from './focus-guard.ts';

/** Starts what a keyboard and a screen reader need beside the page itself: loaded after it. */
export function startAccess(): void {
  const region = document.getElementById('announcer');
  if (region) startAnnouncer(region);
  startFocusGuard();
}
