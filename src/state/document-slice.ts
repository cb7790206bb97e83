import { wallsAlongChain } from '../../geometry/edit/draw-walls.ts';
import type { Item } from '../../geometry/edit/index.ts';
import { duplicatedItems, type EditResult, movedItems, nextId, withoutItems } from '../../geometry/edit/index.ts';
import {
  checkedResult,
  findItem,
  prefixOf,
  uncheckedItemAdded,
  uncheckedItemPatched,
} from '../../geometry/edit/listed-items.ts';
import { levelName } from '../../geometry/messages/subject.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Detector, Level, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import type { Line } from '../../geometry/plane/types.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { JUST_INSIDE, nearestSpot } from '../../geometry/region/nearest.ts';
import { baseHeightAt } from '../../geometry/snap/base-height.ts';
import { formatMeasured } from '../../geometry/units/index.ts';
import type { AppState, DocumentActions, DocumentState, GetState, SetState } from './app-state.ts';
import { withoutContradictions } from './contradictions.ts';
import { remarkOn } from './edit-remarks.ts';
import { freshPlan } from './fresh-plan.ts';
import { selectLevel, selectModel, selectRegion } from './selectors.ts';
import { SELECT_TOOL } from './tool.ts';
import { cornerSetAgain, cornerTakenBack, NO_CHAIN, thicknessFrom, type WallChain, withWalls } from './wall-chain.ts';

interface History {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly clear: () => void;
}

/** After every change of document: no gesture under way, no message. */
const AT_REST = { draft: null, live: null, chain: NO_CHAIN, message: '' } as const;
/** A copy lands a foot to the right and below. */
export const COPY_OFFSET = 304.8;

/** The document and what edits it. `history`: the steps that can be taken back. */
export function createDocumentSlice(
  set: SetState,
  get: GetState,
  history: () => History,
): DocumentState & DocumentActions {
  const run = (edit: (plan: Plan) => Plan | EditResult): string => {
    const { plan } = get();
    const result = checkedResult(plan, edit(plan));
    if (!result.ok) {
      set({ draft: null, message: result.reason });
      return result.reason;
    }
    const settled = withoutContradictions(plan, result.plan);
    const remark = remarkOn(plan, settled.plan);
    const message = [settled.words, remark?.words ?? ''].filter(Boolean).join(' ');
    set({ plan: settled.plan, draft: null, message, remark });
    return '';
  };
  const open = (plan: Plan) => {
    set({ ...AT_REST, plan, levelId: firstLevelId(plan), selection: [], hover: null, tool: SELECT_TOOL });
    history().clear();
    get().fit();
  };
  const step = (take: () => void) => {
    const before = get().plan;
    set({ draft: null, live: null, chain: NO_CHAIN });
    take();
    set(shownAfterStep(before, get()));
  };
  /** Whether the chain that is being drawn had a corner to give. */
  const stepChain = (stepped: WallChain | null): boolean => {
    if (stepped) set({ chain: stepped });
    return stepped !== null;
  };
  const addWalls = (lines: readonly Line[], thickness: Mm): boolean => {
    if (lines.length === 0) return false;
    const before = selectModel(get()).rooms.length;
    const levelId = selectLevel(get()).id;
    run((plan) => withWalls(plan, levelId, lines, thickness));
    const closed = selectModel(get()).rooms.length - before;
    if (closed > 0) set({ message: [closedWords(closed), get().message].filter(Boolean).join(' ') });
    // The first room is what all that follows stands in: it comes into view as large as it goes.
    if (closed > 0 && before === 0) get().fit();
    return closed > 0;
  };
  const endChain = () => {
    const { corners } = get().chain;
    const [start] = corners;
    set({ chain: NO_CHAIN });
    if (start) addWalls(wallsAlongChain(corners), thicknessFrom(selectModel(get()), start));
  };
  return {
    plan: freshPlan(),
    run,
    addItem: (list, item) => {
      const id = nextId(get().plan, prefixOf(list));
      const levelId = selectLevel(get()).id;
      // The caller's list names the type of the item.
      if (run((plan) => uncheckedItemAdded(plan, levelId, list, { ...item, id } as Item))) return '';
      set({ selection: [id] });
      return id;
    },
    updateItem: (id, patch) => {
      const levelId = selectLevel(get()).id;
      return run((plan) => uncheckedItemPatched(plan, levelId, id, patch));
    },
    deleteSelection: () => {
      const { selection } = get();
      if (selection.length === 0) return;
      const levelId = selectLevel(get()).id;
      run((plan) => withoutItems(plan, levelId, selection));
      set({ selection: [] });
    },
    duplicateSelection: () => {
      const state = get();
      if (state.selection.length === 0) return;
      const copies = duplicatedItems(state.plan, selectLevel(state).id, state.selection, COPY_OFFSET, COPY_OFFSET);
      run(() => copies);
      if (copies.ok) set({ selection: copies.ids });
    },
    nudge: (dx, dy) => {
      const { selection } = get();
      if (selection.length === 0) return;
      const levelId = selectLevel(get()).id;
      run((plan) => movedItems(plan, levelId, selection, dx, dy));
    },
    addDetector: (at) => {
      const state = get();
      return state.addItem('detectors', newDetector(selectLevel(state), at ?? freeSpot(state)));
    },
    moveToNearest: (detectorId) => moveToNearest(get(), detectorId),
    addWalls,
    endChain,
    undo: () => stepChain(cornerTakenBack(get().chain)) || step(history().undo),
    redo: () => {
      // A later step of the plan would take the ground from under the walls that are being drawn.
      if (!stepChain(cornerSetAgain(get().chain)) && get().chain.corners.length === 0) step(history().redo);
    },
    newPlan: () => open(freshPlan()),
    openPlan: open,
  };
}

function closedWords(rooms: number): string {
  return rooms === 1
    ? 'The room is closed. Say what it is used for.'
    : 'The rooms are closed. Say what they are used for.';
}

const firstLevelId = (plan: Plan): string => plan.levels[0]?.id ?? '';

/** After a step of history: the level that changed comes into view, and the selection keeps what is still there. */
function shownAfterStep(before: Plan, state: AppState): Partial<AppState> {
  const old = new Map(before.levels.map((level) => [level.id, level]));
  const changed = state.plan.levels.filter((level) => old.get(level.id) !== level);
  // What comes back weighs more than what only moved up or down for it.
  const back = changed.find(({ id }) => !old.has(id));
  const shown = back ?? changed.find(({ id }) => id === state.levelId) ?? changed[0] ?? selectLevel(state);
  return { message: '', levelId: shown.id, selection: state.selection.filter((id) => findItem(shown, id) !== null) };
}

/** The next label of the sort A1, A2, ... that the level does not have yet. */
export function nextLabel(level: Level): string {
  let number = 1;
  while (level.detectors.some(({ label }) => label === `A${number}`)) number += 1;
  return `A${number}`;
}

function newDetector(level: Level, at: XY): Omit<Detector, 'id'> {
  const base = baseHeightAt(level, at, USUAL_DETECTOR.base);
  return { label: nextLabel(level), at, ...USUAL_DETECTOR, base, pair: null };
}

function freeSpot(state: AppState): XY {
  const { viewport, stageSize } = state;
  const middle: XY = [
    (stageSize.width / 2 - viewport.x) / viewport.scale,
    (stageSize.height / 2 - viewport.y) / viewport.scale,
  ];
  return nearestSpot(selectRegion(state), middle)?.at ?? middle;
}

function moveToNearest(state: AppState, detectorId: string): void {
  const detector = selectLevel(state).detectors.find(({ id }) => id === detectorId);
  if (!detector) return;
  const { base, radius, tall } = detector;
  const { plan } = state;
  // With the tape's tolerance to spare: what is moved on the app's word turns clear, not only tight.
  const region = levelRegion(
    plan,
    selectModel(state),
    { base, radius, tall },
    { spare: plan.tapeTolerance + JUST_INSIDE },
  );
  const spot = nearestSpot(region, detector.at);
  if (!spot) {
    const height = formatMeasured(base, plan.display.length);
    state.say(
      `No spot on ${levelName(selectLevel(state))} is clear ${height} above the floor. Change the height, or look on another level.`,
    );
    return;
  }
  state.updateItem(detectorId, { at: spot.at });
}
