import { create } from 'zustand';

/** What the top bar says about the plan's copy in this browser. */
export type SavedSign =
  | { readonly state: 'resting' }
  | { readonly state: 'saving' }
  | { readonly state: 'saved'; readonly at: number }
  /** `reason` says what happened and what to do. */
  | { readonly state: 'failed'; readonly reason: string }
  /** Another tab has written since: nothing is written until the user has chosen. */
  | { readonly state: 'held'; readonly at: number };

export const useSavedSign = create<{ readonly sign: SavedSign }>()(() => ({ sign: { state: 'resting' } }));

export function showSign(sign: SavedSign): void {
  useSavedSign.setState({ sign });
}

/** "10:42", in the reader's own way of telling the time. */
export function clockTime(at: number): string {
  return new Intl.DateTimeFormat(undefined, { hour: 'numeric', minute: '2-digit' }).format(at);
}
