import type { Level } from '../../geometry/plan/model.ts';
import { memoizeRecent } from '../../geometry/plane/memoize.ts';

/** As many levels as models are kept of. */
const MOST = 24;
/** The last level of each id that was not only another picture under the same drawing. */
const last = new Map<string, Level>();

/**
 * The same level for all that differ in nothing but the picture that is drawn over: to fade, move or scale it works nothing out
 * anew. Only a key for what is remembered: its `tracing` may be another one, so it must never find its way back into a plan.
 */
export const asDrawn = memoizeRecent((level: Level): Level => {
  const before = last.get(level.id);
  if (before && sameDrawing(before, level)) return before;
  if (last.size >= MOST) last.clear();
  last.set(level.id, level);
  return level;
}, MOST);

function sameDrawing({ tracing: _, ...before }: Level, { tracing: __, ...now }: Level): boolean {
  const [old, kept] = [Object.entries(before), new Map<string, unknown>(Object.entries(now))];
  return old.length === kept.size && old.every(([key, value]) => kept.get(key) === value);
}
