import type { Level } from '../../geometry/plan/model.ts';
import { memoizeRecent } from '../../geometry/plane/memoize.ts';

/** As many levels as models are cached. */
const MOST = 24;
/** By id, the last level whose drawing was a new one, not only the picture under it. */
const last = new Map<string, Level>();

/**
 * Returns the same level for all that differ in nothing but the picture that is drawn over, so that to fade, move or scale it computes
 * nothing anew. Only a key for memoized results: its `tracing` may be another one, so it must never get back into a plan.
 */
export const drawingKey = memoizeRecent((level: Level): Level => {
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
