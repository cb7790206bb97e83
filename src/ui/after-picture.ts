import { startAccess } from './announce/start-access.ts';
import { startFileDrop } from './shell/file-drop.ts';

/** Starts what the first picture does not need: files that are dropped, what a screen reader is told, where the focus goes. */
export function startAfterPicture(): void {
  startFileDrop();
  startAccess();
}
