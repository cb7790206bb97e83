import { create } from 'zustand';

/** Whether a newer version of the app lies ready. */
export type NewVersion =
  | { readonly state: 'none' }
  /** `start` saves the plan and loads the new version; answers why it did not, or empty. */
  | { readonly state: 'ready'; readonly start: () => Promise<string> }
  /** Another tab has started it: this one goes on with the old one until it is loaded anew, by `start` as well. */
  | { readonly state: 'runs-elsewhere'; readonly start: () => Promise<string> };

export const useNewVersion = create<{ readonly version: NewVersion }>()(() => ({ version: { state: 'none' } }));
