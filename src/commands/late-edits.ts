import { PART_MISSING } from '../platform/part-missing.ts';
import { useAppStore } from '../state/store.ts';

type WallEdits = typeof import('../state/edit-walls.ts');

/** Loads the edits that split, join and mend walls: their code comes after the start. */
export const loadWallEdits = (): Promise<WallEdits> => import('../state/edit-walls.ts');

/** Calls `does` with these edits; shows a message where their code cannot be loaded. */
export function withWallEdits(does: (edits: WallEdits) => void): void {
  loadWallEdits().then(does, () => useAppStore.getState().say(PART_MISSING));
}
