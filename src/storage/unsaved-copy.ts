import type { StoredWork } from './library/plans.ts';
import { isStoredView } from './library/records.ts';
import { isSplitText, type SplitText, splitText } from './long-texts.ts';

/**
 * Copies of changes made just before the page was left. IndexedDB may be too slow then, so the copy is written to localStorage, which is
 * synchronous, under a key for each tab; the next start stores it in the library and clears it.
 */
const PREFIX = 'stillspot-last-words/';

export interface UnsavedCopy extends Omit<StoredWork, 'text'> {
  readonly text: SplitText;
  /** Another tab had written since: this copy becomes a version of the plan and is not opened. */
  readonly held: boolean;
}

export function keepUnsavedCopy({ text, ...work }: StoredWork, held: boolean): void {
  // With its pictures if they fit; otherwise without them, since the store usually has them already.
  for (const words of [{ pieces: [text], long: [] }, splitText(text).text]) {
    try {
      localStorage.setItem(PREFIX + work.tab, JSON.stringify({ ...work, text: words, held }));
      return;
    } catch {
      // Full or forbidden: only the write to IndexedDB can then save the changes.
    }
  }
}

/** Copies of all tabs, oldest first. They stay until `clearUnsavedCopies`. */
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
    // localStorage is not available, so there is no copy.
  }
}
