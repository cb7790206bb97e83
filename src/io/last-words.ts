import { isStoredPlan, type StoredPlan } from './cabinet.ts';

/**
 * What was drawn in the last moment before the page was left. The browser's store is slower than the leaving, so this one
 * copy goes where writing does not wait; the next start takes it up and clears it.
 */
const KEY = 'stillspot-last-words';

export interface LastWords {
  readonly plan: StoredPlan;
  /** Another tab had written since: these words go on the shelf and do not take the sheet. */
  readonly held: boolean;
}

export function leaveLastWords(words: LastWords): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(words));
  } catch {
    // Full or forbidden: the store's own write is under way and is all there is.
  }
}

/** Empty when nothing was left, or nothing that can be read. */
export function takeLastWords(): LastWords | null {
  try {
    const words: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    localStorage.removeItem(KEY);
    if (typeof words !== 'object' || words === null) return null;
    const { plan, held } = words as { plan?: unknown; held?: unknown };
    return isStoredPlan(plan) ? { plan, held: held === true } : null;
  } catch {
    return null;
  }
}

export function clearLastWords(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Not there to be cleared.
  }
}
