import { createStore, get, set, type UseStore, update } from 'idb-keyval';
import { create } from 'zustand';
import type { XY } from '../../geometry/plan/model.ts';

/** The browser's own store, with every way in which it can fail put into words. */

/** One plan as it lies in the store: the text of its file, so that it is read back through the same door as a file. */
export interface StoredPlan {
  readonly text: string;
  /** ms since 1970. */
  readonly savedAt: number;
  /** The tab that wrote it. */
  readonly tab: string;
  readonly view: StoredView;
}

/** How the plan was looked at. */
export interface StoredView {
  readonly levelId: string;
  readonly selection: readonly string[];
  readonly viewport: { readonly scale: number; readonly x: number; readonly y: number } | null;
  /** Corners of walls that were being drawn, mm; left out by copies of an earlier time. */
  readonly corners?: readonly XY[];
}

/** A plan that was put away when another took its place, or that could not be read. */
export interface ShelvedPlan {
  readonly title: string;
  readonly text: string;
  readonly putAwayAt: number;
  readonly readable: boolean;
}

/** Enough for a week of visits. */
const SHELF_LIMIT = 12;

let opened: UseStore | null = null;
const store = (): UseStore => {
  opened ??= createStore('stillspot', 'plans');
  return opened;
};

export function readWork(): Promise<unknown> {
  return get('work', store());
}

export type WriteResult =
  | { readonly ok: true }
  | { readonly ok: false; readonly other: StoredPlan }
  | { readonly ok: false; readonly other: null; readonly reason: string };

/**
 * Writes the open plan unless another tab has written since `lastSeen` (ms; null: nothing seen yet). Reading and writing are one
 * transaction, so two tabs cannot both win.
 */
export async function writeWork(plan: StoredPlan, lastSeen: number | null, force = false): Promise<WriteResult> {
  let other: StoredPlan | null = null;
  try {
    await update<unknown>(
      'work',
      (old) => {
        other = !force && isStoredPlan(old) && old.tab !== plan.tab && old.savedAt !== lastSeen ? old : null;
        return other ?? plan;
      },
      store(),
    );
  } catch (error) {
    opened = null; // the next try opens the store afresh
    return { ok: false, other: null, reason: troubleInWords(error) };
  }
  return other ? { ok: false, other } : { ok: true };
}

/** How many plans lie on the shelf, as far as this page knows. */
export const useShelfCount = create<{ readonly count: number }>()(() => ({ count: 0 }));

export async function readShelf(): Promise<readonly ShelvedPlan[]> {
  try {
    const shelf: unknown = await get('shelf', store());
    const plans = Array.isArray(shelf) ? shelf.filter(isShelvedPlan) : [];
    useShelfCount.setState({ count: plans.length });
    return plans;
  } catch {
    return []; // a shelf that cannot be read is empty; the sign already says that the store is out of reach
  }
}

/** Newest first; the same text twice in a row is kept once. Answers whether it could be put away. */
export async function putOnShelf(plan: ShelvedPlan): Promise<boolean> {
  try {
    await update<unknown>(
      'shelf',
      (old) => {
        const shelf = Array.isArray(old) ? old.filter(isShelvedPlan) : [];
        const next = [plan, ...shelf.filter(({ text }) => text !== plan.text)].slice(0, SHELF_LIMIT);
        useShelfCount.setState({ count: next.length });
        return next;
      },
      store(),
    );
    return true;
  } catch {
    return false;
  }
}

export async function readSetting(name: string): Promise<unknown> {
  try {
    return await get(`setting/${name}`, store());
  } catch {
    return undefined;
  }
}

export async function writeSetting(name: string, value: unknown): Promise<void> {
  try {
    await set(`setting/${name}`, value, store());
  } catch {
    // A theme that is forgotten is no loss; the sign tells of a store out of reach when the plan is written.
  }
}

export function isStoredPlan(value: unknown): value is StoredPlan {
  if (typeof value !== 'object' || value === null) return false;
  const { text, savedAt, tab, view } = value as Partial<Record<keyof StoredPlan, unknown>>;
  return typeof text === 'string' && typeof savedAt === 'number' && typeof tab === 'string' && isStoredView(view);
}

function isStoredView(value: unknown): value is StoredView {
  if (typeof value !== 'object' || value === null) return false;
  const { levelId, selection, corners = [] } = value as Partial<Record<keyof StoredView, unknown>>;
  return typeof levelId === 'string' && Array.isArray(selection) && Array.isArray(corners) && corners.every(isPoint);
}

function isPoint(value: unknown): value is XY {
  return Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);
}

function isShelvedPlan(value: unknown): value is ShelvedPlan {
  if (typeof value !== 'object' || value === null) return false;
  const { title, text, putAwayAt, readable } = value as Partial<Record<keyof ShelvedPlan, unknown>>;
  return (
    typeof title === 'string' &&
    typeof text === 'string' &&
    typeof putAwayAt === 'number' &&
    typeof readable === 'boolean'
  );
}

/** Why the browser's store would not take a plan, and the way out. */
export function troubleInWords(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return 'The storage of this browser is full. Save the plan as a file, then free some space.';
  }
  if (name === 'SecurityError' || name === 'InvalidStateError' || typeof indexedDB === 'undefined') {
    return 'This browser keeps nothing for this page, as in a private window. Save the plan as a file before you close it.';
  }
  return 'The browser did not take the copy. Save the plan as a file.';
}
