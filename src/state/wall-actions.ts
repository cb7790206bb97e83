import type { TapedBy } from '../../geometry/dimension/taped-by.ts';
import { uncheckedLevelEdit } from '../../geometry/edit/level.ts';
import { builtRun, withWallsStretched } from '../../geometry/edit/run-on-walls.ts';
import { checkedWalls } from '../../geometry/edit/wall-edit.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Level, Mm } from '../../geometry/plan/model.ts';
import type { Line } from '../../geometry/plane/types.ts';
import type { DocumentActions, GetState, SetState } from './app-state.ts';
import { selectLevel, selectModel } from './selectors.ts';
import { NO_CHAIN, thicknessFrom, withWallsOnLines } from './wall-chain.ts';

/** Puts walls on the level in view. */
export function createWallActions(set: SetState, get: GetState): Pick<DocumentActions, 'addWalls' | 'endChain'> {
  const add = (lines: readonly Line[], thickness: Mm, change: (level: Level) => Level): boolean => {
    if (lines.length === 0) return false;
    const { rooms } = selectModel(get());
    const before = rooms.length;
    const levelId = selectLevel(get()).id;
    get().run((plan) =>
      withWallsOnLines(uncheckedLevelEdit(plan, levelId, change), levelId, lines, thickness, get().wallSettings),
    );
    const closed = selectModel(get()).rooms.length - before;
    if (closed > 0) sayClosed(set, get, rooms);
    // Most of what is drawn later is in the first room, so it is brought into view as large as possible.
    if (closed > 0 && before === 0) get().fit();
    return closed > 0;
  };
  return {
    addWalls: (lines, thickness) => add(lines, thickness, (level) => level),
    endChain: () => {
      const { chain, wallSettings, plan } = get();
      const [start] = chain.corners;
      set({ chain: NO_CHAIN });
      if (!start) return;
      const model = selectModel(get());
      const thickness = thicknessFrom(model, start, wallSettings);
      const run = (by: TapedBy) => builtRun(model.level, chain.corners, thickness, by);
      const built = run(wallSettings.by);
      const stretched = checkedWalls(model, withWallsStretched(model.level, built), plan.display.length);
      // If a standing wall cannot be stretched to the new ones, the new ones are centered on their line.
      if (stretched.ok) add(built.lines, thickness, () => stretched.level);
      else add(run('center').lines, thickness, (level) => level);
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
