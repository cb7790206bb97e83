import { wallsAlongRun } from '../../geometry/edit/wall-run.ts';
import type { DocumentActions, GetState, SetState } from './app-state.ts';
import { selectLevel, selectModel } from './selectors.ts';
import { NO_CHAIN, thicknessFrom, withWallsOnLines } from './wall-chain.ts';

/** Puts walls on the level in view. */
export function createWallActions(set: SetState, get: GetState): Pick<DocumentActions, 'addWalls' | 'endChain'> {
  return {
    addWalls: (lines, thickness) => {
      if (lines.length === 0) return false;
      const before = selectModel(get()).rooms.length;
      const levelId = selectLevel(get()).id;
      get().run((plan) => withWallsOnLines(plan, levelId, lines, thickness));
      const closed = selectModel(get()).rooms.length - before;
      if (closed > 0) set({ message: [closedWords(closed), get().message].filter(Boolean).join(' ') });
      // The first room is what all that follows stands in: it comes into view as large as it goes.
      if (closed > 0 && before === 0) get().fit();
      return closed > 0;
    },
    endChain: () => {
      const { corners } = get().chain;
      const [start] = corners;
      set({ chain: NO_CHAIN });
      if (!start) return;
      const thickness = thicknessFrom(selectModel(get()), start, get().wallSettings);
      get().addWalls(wallsAlongRun(selectLevel(get()), corners, thickness, get().wallSettings.by), thickness);
    },
  };
}

function closedWords(rooms: number): string {
  return rooms === 1
    ? 'The room is closed. Enter what it is used for.'
    : 'The rooms are closed. Enter what they are used for.';
}
