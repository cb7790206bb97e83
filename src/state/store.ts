import { type TemporalState, temporal } from 'zundo';
import { create, type StoreApi } from 'zustand';
import { freshPlan } from './fresh-plan.ts';
import { createLevelActions, type LevelActions } from './level-actions.ts';
import { createPlanActions, type PlanActions, type PlanState } from './plan-slice.ts';
import { createViewActions } from './view-actions.ts';
import { INITIAL_VIEW, type ViewActions, type ViewState } from './view-slice.ts';

export type AppState = PlanState & PlanActions & LevelActions & ViewState & ViewActions;

/** How many steps can be taken back. */
const HISTORY_LIMIT = 300;

/** The document and how it is looked at. Only `plan` is history: pan, zoom, selection and what is being carried are not. */
export const useAppStore = create<AppState>()(
  temporal(
    (set, get, api) => {
      const plan = freshPlan();
      return {
        plan,
        ...INITIAL_VIEW,
        levelId: plan.levels[0]?.id ?? '',
        ...createPlanActions(set, get, () => historyOf(api)),
        ...createLevelActions(set, get),
        ...createViewActions(set, get),
      };
    },
    {
      partialize: ({ plan }) => ({ plan }),
      equality: (past, current) => past.plan === current.plan,
      limit: HISTORY_LIMIT,
    },
  ),
);

/** zundo hangs its own store on ours before it asks for the first state, but the type does not say so. */
function historyOf(api: object): TemporalState<Pick<AppState, 'plan'>> {
  return (api as { temporal: StoreApi<TemporalState<Pick<AppState, 'plan'>>> }).temporal.getState();
}
