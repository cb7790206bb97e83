import { keepWallSettings } from './kept-wall-settings.ts';
import { startTapeKeys } from './tape-keys.ts';

/** What drawing needs and the first picture does not: the settings of walls, and the laser tape that types. */
export async function startDrawing(): Promise<void> {
  await Promise.all([keepWallSettings(), startTapeKeys()]);
}
