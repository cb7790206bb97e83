import { loadLateTools } from '../editor/tools/late-tool.ts';
import { keepWallSettings } from './kept-wall-settings.ts';
import { startTapeKeys } from './tape-keys.ts';
import { loadWallEdits } from './wall-edits.ts';

/** What drawing needs and the first picture does not: the settings of walls, the laser tape that types, rarer tools and edits. */
export async function startDrawing(): Promise<void> {
  await Promise.all([keepWallSettings(), startTapeKeys(), loadLateTools(), loadWallEdits()]);
}
