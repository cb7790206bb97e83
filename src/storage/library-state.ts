import { create } from 'zustand';
import { freshId } from './fresh-id.ts';

/** The save status that the top bar shows. */
export type SaveStatus =
  | { readonly state: 'resting' }
  | { readonly state: 'saving' }
  | { readonly state: 'saved'; readonly at: number }
  /** `reason` says what happened and what to do. */
  | { readonly state: 'failed'; readonly reason: string }
  /** Another tab has written since: nothing is written until the user has chosen. */
  | { readonly state: 'held'; readonly at: number };

/** The message of the library about the last action, and how it is undone. */
export interface LibraryMessage {
  readonly text: string;
  readonly undo: (() => Promise<void>) | null;
}

interface LibraryState {
  /** The plan of the library that is open. */
  readonly openId: string;
  /** Whether it is in the library already; a sheet on which nothing was drawn is not. */
  readonly inLibrary: boolean;
  readonly saveStatus: SaveStatus;
  /** Counts up when anything in the library has changed, here or in another tab: lists are read again. */
  readonly changes: number;
  readonly message: LibraryMessage;
}

/** The library of plans in this browser, as far as the page shows it: what is open, whether it is saved, what has changed. */
export const useLibrary = create<LibraryState>()(() => ({
  openId: freshId(),
  inLibrary: false,
  saveStatus: { state: 'resting' },
  changes: 0,
  message: { text: '', undo: null },
}));

/**
 * Returns a function that says whether the plan that is open now still is. To be asked after every await before the plan is changed:
 * another one may have been opened meanwhile.
 */
export function samePlan(): () => boolean {
  const { openId } = useLibrary.getState();
  return () => useLibrary.getState().openId === openId;
}

export function showSaveStatus(saveStatus: SaveStatus): void {
  useLibrary.setState({ saveStatus });
}

export function showLibraryMessage(text: string, undo: LibraryMessage['undo'] = null): void {
  useLibrary.setState({ message: { text, undo } });
}
