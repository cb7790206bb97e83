import { type TemporalState, temporal } from 'zundo';
import { create, type StoreApi } from 'zustand';
import type { AppState } from './app-state.ts';
import { createDocumentSlice } from './document-slice.ts';
import { createLevelSlice } from './level-slice.ts';
import { createSessionSlice } from './session-slice.ts';
import { createViewSlice } from './view-slice.ts';

/** Most steps that can be undone. */
const HISTORY_LIMIT = 300;

/** The store of the app: document, view and session. Only `plan` is history. */
export const useAppStore = create<AppState>()(
  temporal(
    (set, get, api) => {
      const document = createDocumentSlice(set, get, () => historyOf(api));
      return {
        ...document,
        levelId: document.plan.levels[0]?.id ?? '',
        ...createLevelSlice(set, get),
        ...createViewSlice(set, get),
        ...createSessionSlice(set, get),
      };
    },
    {
      partialize: ({ plan }) => ({ plan }),
      equality: (past, current) => past.plan === current.plan,
      limit: HISTORY_LIMIT,
    },
  ),
);

/** zundo adds its own store to ours before it asks for the first state, which the type does not say. */
function historyOf(api: object): TemporalState<Pick<AppState, 'plan'>> {
  return (api as { temporal: StoreApi<TemporalState<Pick<AppState, 'plan'>>> }).temporal.getState();
}
