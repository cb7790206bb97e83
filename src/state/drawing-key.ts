import type { Level } from '../../geometry/plan/model.ts';
import { memoizeRecent } from '../../geometry/plane/memoize.ts';

/** As many levels as models are cached. */
const MOST = 24;
/** The last level by id whose drawing was new, not only its picture. */
const last = new Map<string, Level>();

/**
 * Returns the same object for levels that differ only in their tracing image, so that fading, moving or scaling the image recomputes
 * nothing. Only a key for memoized results: its `tracing` may be out of date, so it must never get back into a plan.
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
