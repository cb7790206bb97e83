import { takeLatePictures } from '../editor/overlay/late-pictures.ts';
import { animateMovedDetectors } from '../editor/overlay/move-animation.ts';
import { paintNote } from '../editor/overlay/note-picture.ts';
import { drawnMarks } from '../editor/paint/spots.ts';
import { loadLateTools } from '../editor/tools/late-tool.ts';
import { destroyOutlived } from '../storage/library/old-trash.ts';
import { startClipboardKeys } from './clipboard-keys.ts';
import { keepWallSettings } from './kept-wall-settings.ts';
import { loadLateEdits } from './late-edits.ts';
import { watchLimits } from './limit-watch.ts';
import { startTapeKeys } from './tape-keys.ts';

/**
 * Starts what the first picture does not need: the clipboard, wall settings, the laser tape that types, rarer tools and edits, marks, notes
 * and motion on the sheet, the limits of a plan, and the removal of plans that were deleted long ago.
 */
export async function startDrawing(): Promise<void> {
  startClipboardKeys();
  watchLimits();
  takeLatePictures({ drawnMarks, paintNote });
  animateMovedDetectors();
  // If the store cannot be written, the next start tries again.
  void destroyOutlived(Date.now()).catch(() => undefined);
  await Promise.all([keepWallSettings(), startTapeKeys(), loadLateTools(), loadLateEdits()]);
}
