import { startAccess } from './announce/start-access.ts';
import { startFileDrop } from './shell/file-drop.ts';

/** Starts what the first picture does not need: dropped files, announcements for screen readers, and the focus guard. */
export function startAfterPicture(): void {
  startFileDrop();
  startAccess();
}
