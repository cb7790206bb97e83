import type { Detector } from '../plan/model.ts';

/** Sentences with the detector that they were said of. */
export type Said = readonly [detector: Pick<Detector, 'id' | 'label'>, sentences: readonly string[]];

/** Each sentence once, led by the labels of those that it was said of where that is not all. */
export function saidOf(said: readonly Said[]): readonly string[] {
  const lines = new Map<string, string[]>();
  for (const [{ id, label }, sentences] of said) {
    for (const words of sentences) lines.set(words, [...(lines.get(words) ?? []), label.trim() || id]);
  }
  return [...lines].map(([words, who]) => (who.length === said.length ? words : `${who.join(', ')}: ${words}`));
}
