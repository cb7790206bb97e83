import { wallsCopied } from '../../geometry/edit/index.ts';
import { outsideWallIds } from '../../geometry/level/outdoors.ts';
import { capital, counted, listed } from '../../geometry/messages/index.ts';
import type { Level } from '../../geometry/plan/model.ts';
import { levelHeading, levelName } from '../../geometry/plan/nouns.ts';
import type { AppState } from './app-state.ts';
import { modelOf, selectLevel } from './selectors.ts';

/** What is copied from another level in addition to its outside walls. */
export interface CopyChoice {
  readonly openings: boolean;
  readonly insideWalls: boolean;
}

/** Copies walls of another level onto the one in view, and says what was copied. */
export function copyOutline(state: AppState, fromId: string, choice: CopyChoice): void {
  state.endChain();
  const { plan } = state;
  const target = selectLevel(state);
  const source = plan.levels.find(({ id }) => id === fromId);
  if (!source) return;
  const walls = choice.insideWalls ? new Set(source.walls.map(({ id }) => id)) : outsideWallIds(modelOf(source));
  const copied = wallsCopied(plan, fromId, target.id, walls, choice.openings);
  const bare = target.walls.length === 0;
  const reason = state.run(() => copied);
  if (reason || !copied.ok) return;
  if (bare) state.fit();
  state.say(copiedWords(source, walls.size, copied));
}

function copiedWords(source: Level, asked: number, { walls, openings }: { walls: number; openings: number }): string {
  if (asked === 0) return `${levelHeading(source)} has no closed outline yet. Close its walls, then copy them.`;
  if (walls === 0) return `All of these walls of ${levelName(source)} are here already.`;
  const what = listed([counted(walls, 'wall'), openings > 0 ? counted(openings, 'opening') : ''].filter(Boolean));
  return `${capital(what)} copied from ${levelName(source)}. Check with the tape whether ${walls === 1 ? 'it is' : 'they are'} so here.`;
}
