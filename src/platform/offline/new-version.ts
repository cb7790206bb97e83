import { create } from 'zustand';

/** Whether a newer version of the app is installed. */
export type NewVersion =
  | { readonly state: 'none' }
  /** `start` saves the plan and loads the new version; it resolves to the reason if it did not, else to an empty text. */
  | { readonly state: 'ready'; readonly start: () => Promise<string> }
  /** Another tab has activated it: this tab runs the old version until it reloads, which `start` does. */
  | { readonly state: 'runs-elsewhere'; readonly start: () => Promise<string> };

export const useNewVersion = create<{ readonly version: NewVersion }>()(() => ({ version: { state: 'none' } }));
