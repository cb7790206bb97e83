import type { StoredWork } from './library/plans.ts';
import { isStoredView } from './library/records.ts';
import { isSplitText, type SplitText, splitText } from './long-texts.ts';

/**
 * What was drawn in the last moment before the page was left. The browser's store is slower than the leaving, so this copy
 * goes where writing does not wait, each tab's under a key of its own; the next start takes it up and clears it.
 */
const PREFIX = 'stillspot-last-words/';

export interface UnsavedCopy extends Omit<StoredWork, 'text'> {
  readonly text: SplitText;
  /** Another tab had written since: these words go among the versions of the plan and do not take the sheet. */
  readonly held: boolean;
}

export function keepUnsavedCopy({ text, ...work }: StoredWork, held: boolean): void {
  // Whole where it fits; else without its pictures, which most often lie in the store already.
  for (const words of [{ pieces: [text], long: [] }, splitText(text).text]) {
    try {
      localStorage.setItem(PREFIX + work.tab, JSON.stringify({ ...work, text: words, held }));
      return;
    } catch {
      // Full or forbidden: the store's own write is under way and is all there is.
    }
  }
}

/** Those of every tab that had no time to save, oldest first. They stay until `clearUnsavedCopies`. */
export function unsavedCopies(): readonly UnsavedCopy[] {
  try {
    const keys = Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? '');
    return keys
      .filter((key) => key.startsWith(PREFIX))
      .flatMap((key): readonly UnsavedCopy[] => wordsIn(localStorage.getItem(key)))
      .sort((a, b) => a.savedAt - b.savedAt);
  } catch {
    return [];
  }
}

function wordsIn(value: string | null): readonly UnsavedCopy[] {
  try {
    const words: unknown = JSON.parse(value ?? 'null');
    return isWords(words) ? [words] : [];
  } catch {
    return [];
  }
}

function isWords(value: unknown): value is UnsavedCopy {
  if (typeof value !== 'object' || value === null) return false;
  const { id, text, savedAt, tab, view, held } = value as Partial<Record<keyof UnsavedCopy, unknown>>;
  return (
    typeof id === 'string' &&
    isSplitText(text) &&
    typeof savedAt === 'number' &&
    typeof tab === 'string' &&
    isStoredView(view) &&
    typeof held === 'boolean'
  );
}

export function clearUnsavedCopies(tab: string): void {
  try {
    localStorage.removeItem(PREFIX + tab);
  } catch {
    // Not there to be cleared.
  }
}
