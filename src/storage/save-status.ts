import { create } from 'zustand';

/** The save status that the top bar shows. */
export type SaveStatus =
  | { readonly state: 'resting' }
  | { readonly state: 'saving' }
  | { readonly state: 'saved'; readonly at: number }
  /** `reason` says what happened and what to do. */
  | { readonly state: 'failed'; readonly reason: string }
  /** Another tab has written since: nothing is written until the user has chosen. */
  | { readonly state: 'held'; readonly at: number };

export const useSaveStatus = create<{ readonly sign: SaveStatus }>()(() => ({ sign: { state: 'resting' } }));

export function showSaveStatus(sign: SaveStatus): void {
  useSaveStatus.setState({ sign });
}

/** "10:42", in the reader's own way of telling the time. */
export function clockTime(at: number): string {
  return new Intl.DateTimeFormat(undefined, { hour: 'numeric', minute: '2-digit' }).format(at);
}
