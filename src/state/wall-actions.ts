import { wallsAlongRun } from '../../geometry/edit/wall-run.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { DocumentActions, GetState, SetState } from './app-state.ts';
import { selectLevel, selectModel } from './selectors.ts';
import { NO_CHAIN, thicknessFrom, withWallsOnLines } from './wall-chain.ts';

/** Puts walls on the level in view. */
export function createWallActions(set: SetState, get: GetState): Pick<DocumentActions, 'addWalls' | 'endChain'> {
  return {
    addWalls: (lines, thickness) => {
      if (lines.length === 0) return false;
      const { rooms } = selectModel(get());
      const before = rooms.length;
      const levelId = selectLevel(get()).id;
      get().run((plan) => withWallsOnLines(plan, levelId, lines, thickness));
      const closed = selectModel(get()).rooms.length - before;
      if (closed > 0) sayClosed(set, get, rooms);
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

/** Says that rooms are closed, and offers to name the one that is new. */
function sayClosed(set: SetState, get: GetState, before: LevelModel['rooms']): void {
  const { rooms, level } = selectModel(get());
  const { message, remark } = get();
  const words = [closedWords(rooms.length - before.length), message].filter(Boolean).join(' ');
  const keys = new Set(before.map(({ key }) => key));
  const unnamed = rooms.filter(({ label }) => label === null);
  const fresh = unnamed.find(({ key }) => !keys.has(key)) ?? unnamed[0];
  const isMending = message !== '' && remark !== null && remark.action !== null && message.includes(remark.words);
  if (!fresh || isMending) set({ message: words });
  else get().say(words, { kind: 'name-room', label: 'Name this room', levelId: level.id, at: fresh.labelPoint });
}

function closedWords(rooms: number): string {
  return rooms === 1
    ? 'The room is closed. Enter what it is used for.'
    : 'The rooms are closed. Enter what they are used for.';
}
