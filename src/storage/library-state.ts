import { create } from 'zustand';
import { freshId } from './fresh-id.ts';

/** The save status that the top bar shows. */
export type SaveStatus =
  | { readonly state: 'resting' }
  | { readonly state: 'saving' }
  | { readonly state: 'saved'; readonly at: number }
  /** `reason` says what happened and what to do. */
  | { readonly state: 'failed'; readonly reason: string }
  /** Another tab has written the plan since, at `at`: nothing is written until the user has chosen. */
  | { readonly state: 'held'; readonly at: number };

/** The library's message about the last action, and the function that undoes it. */
export interface LibraryMessage {
  readonly text: string;
  readonly undo: (() => Promise<void>) | null;
}

interface LibraryState {
  /** Id of the open plan. */
  readonly openId: string;
  /** Whether the open plan is in the library; a sheet on which nothing was drawn is not. */
  readonly inLibrary: boolean;
  readonly saveStatus: SaveStatus;
  /** Increases when anything in the library has changed, here or in another tab: lists are then read again. */
  readonly changes: number;
  readonly message: LibraryMessage;
}

/** State of the library in this browser that the page shows: the open plan, whether it is saved, and changes. */
export const useLibrary = create<LibraryState>()(() => ({
  openId: freshId(),
  inLibrary: false,
  saveStatus: { state: 'resting' },
  changes: 0,
  message: { text: '', undo: null },
}));

/**
 * Returns a function that says whether the plan that is open now is still open. Call it after every await before the plan is changed:
 * another plan may have been opened meanwhile.
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
