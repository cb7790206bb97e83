import type { EditResult } from '../../geometry/edit/index.ts';
import { checkedResult, findItem } from '../../geometry/edit/listed-items.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import type { AppState, DocumentActions, DocumentState, GetState, SetState } from './app-state.ts';
import { withoutContradictions } from './contradictions.ts';
import { remarkOn } from './edit-remarks.ts';
import { freshPlan } from './fresh-plan.ts';
import { createItemActions } from './item-actions.ts';
import { selectLevel } from './selectors.ts';
import { SELECT_TOOL } from './tool.ts';
import { createWallActions } from './wall-actions.ts';
import { cornerSetAgain, cornerTakenBack, NO_CHAIN, type WallChain } from './wall-chain.ts';
import { forAnotherPlan } from './wall-settings.ts';

interface History {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly clear: () => void;
}

/** After every change of document: no gesture under way, no message. */
const AT_REST = { previewPlan: null, draggedDetector: null, chain: NO_CHAIN, message: '' } as const;

/** Returns the document and the actions that edit it. @param history the undo history */
export function createDocumentSlice(
  set: SetState,
  get: GetState,
  history: () => History,
): DocumentState & DocumentActions {
  return {
    plan: freshPlan(),
    run: (edit) => runEdit(set, get, edit),
    ...createItemActions(set, get),
    ...createWallActions(set, get),
    ...createHistoryActions(set, get, history),
  };
}

function runEdit(set: SetState, get: GetState, edit: (plan: Plan) => Plan | EditResult): string {
  const { plan } = get();
  const result = checkedResult(plan, edit(plan));
  if (!result.ok) {
    set({ previewPlan: null, message: result.reason });
    return result.reason;
  }
  const settled = withoutContradictions(plan, result.plan);
  const remark = remarkOn(plan, settled.plan);
  const message = [settled.words, remark?.words ?? ''].filter(Boolean).join(' ');
  set({ plan: settled.plan, previewPlan: null, message, remark });
  return '';
}

type HistoryActions = Pick<DocumentActions, 'undo' | 'redo' | 'newPlan' | 'openPlan'>;

/** Returns the actions that step through the history, and those that open a plan, which starts a new history. */
function createHistoryActions(set: SetState, get: GetState, history: () => History): HistoryActions {
  const open = (plan: Plan) => {
    // Another plan is another walk: the name stays, but its time would be wrong.
    const walk = { ...get().walk, at: null };
    const wallSettings = forAnotherPlan(get().wallSettings);
    const session = {
      selection: [],
      hover: null,
      tool: SELECT_TOOL,
      unlocked: [],
      walk,
      wallSettings,
      roomAsked: null,
    };
    set({ ...AT_REST, plan, levelId: firstLevelId(plan), ...session });
    history().clear();
    get().fit();
  };
  const step = (take: () => void) => {
    const before = get().plan;
    set({ previewPlan: null, draggedDetector: null, chain: NO_CHAIN });
    take();
    set(shownAfterStep(before, get()));
  };
  /** Applies a step of the chain that is being drawn. Returns false if there is none. */
  const stepChain = (stepped: WallChain | null): boolean => {
    if (stepped) set({ chain: stepped });
    return stepped !== null;
  };
  return {
    undo: () => stepChain(cornerTakenBack(get().chain)) || step(history().undo),
    redo: () => {
      // A redo of the plan could change the level under the walls that are being drawn.
      if (!stepChain(cornerSetAgain(get().chain)) && get().chain.corners.length === 0) step(history().redo);
    },
    newPlan: () => open(freshPlan()),
    openPlan: open,
  };
}

const firstLevelId = (plan: Plan): string => plan.levels[0]?.id ?? '';

/** After a step of history: the level that changed comes into view, and the selection keeps what is still there. */
function shownAfterStep(before: Plan, state: AppState): Partial<AppState> {
  const old = new Map(before.levels.map((level) => [level.id, level]));
  const changed = state.plan.levels.filter((level) => old.get(level.id) !== level);
  // A level that is restored comes before levels whose order only changed with it.
  const back = changed.find(({ id }) => !old.has(id));
  const shown = back ?? changed.find(({ id }) => id === state.levelId) ?? changed[0] ?? selectLevel(state);
  return { message: '', levelId: shown.id, selection: state.selection.filter((id) => findItem(shown, id) !== null) };
}
