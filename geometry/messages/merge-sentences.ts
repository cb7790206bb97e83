import type { Detector } from '../plan/model.ts';

/** A detector with the sentences about it. */
export type DetectorSentences = readonly [detector: Pick<Detector, 'id' | 'label'>, sentences: readonly string[]];

/** Returns each sentence once, prefixed by the labels of its detectors unless it applies to all. */
export function mergeSentences(entries: readonly DetectorSentences[]): readonly string[] {
  const lines = new Map<string, string[]>();
  for (const [{ id, label }, sentences] of entries) {
    for (const words of sentences) lines.set(words, [...(lines.get(words) ?? []), label.trim() || id]);
  }
  return [...lines].map(([words, who]) => (who.length === entries.length ? words : `${who.join(', ')}: ${words}`));
}
