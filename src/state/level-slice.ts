import {
  type Beside,
  levelsInOrder,
  nextId,
  withLevelAtHeightOf,
  withLevelBeside,
  withLevelMoved,
  withNewLevel,
  withOrdersFromZero,
  withoutLevel,
} from '../../geometry/edit/index.ts';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { levelHeading } from '../../geometry/plan/nouns.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import { itemsExtent } from '../../geometry/snap/items-extent.ts';
import { extentBetween } from '../../geometry/snap/pick.ts';
import type { GetState, LevelActions, SetState } from './app-state.ts';
import { addedWords, goneWords, placeWords } from './level-words.ts';
import { recordsGone } from './records-gone.ts';
import { selectLevel } from './selectors.ts';
import { SELECT_TOOL } from './tool.ts';
import { showsAnyOf } from './view-slice.ts';
import { showing } from './viewport.ts';
import { NO_CHAIN } from './wall-chain.ts';

/** Names of new levels, by where they are added. */
const NAMES: Readonly<Record<Beside, readonly string[]>> = {
  above: ['Main floor', 'Upper floor', 'Top floor'],
  below: ['Basement', 'Lower basement'],
};

/** Changes the levels of the plan, and which one is in view. */
export function createLevelSlice(set: SetState, get: GetState): LevelActions {
  return {
    setLevel: (levelId) => setLevel(set, get, levelId),
    addLevel: (where = 'above') => addLevel(get, where),
    stepLevel: (where) => stepLevel(get, where),
    moveLevel: (where) => {
      const end = where === 'above' ? 'highest' : 'lowest';
      const refusal = `${levelHeading(selectLevel(get()))} is the ${end} level.`;
      reorder(get, (plan, id) => withLevelMoved(plan, id, where), refusal);
    },
    putLevelWith: (otherId) =>
      reorder(get, (plan, id) => withLevelAtHeightOf(plan, id, otherId), 'They are at the same height already.'),
    deleteLevel: (levelId) => deleteLevel(get, levelId),
    showThings: (levelId, ids, at = null) => showThings(set, get, levelId, ids, at),
  };
}

function setLevel(set: SetState, get: GetState, levelId: string): void {
  get().endChain();
  set({
    previewPlan: null,
    draggedDetector: null,
    chain: NO_CHAIN,
    message: '',
    levelId,
    selection: [],
    hover: null,
    tool: SELECT_TOOL,
    roomAsked: null,
  });
  // A view of one part of the building stays on that part.
  if (get().wholeInView || !showsAnyOf(get())) get().fit();
}

function addLevel(get: GetState, where: Beside): void {
  const { plan } = get();
  const beside = plan.levels.length > 0 ? selectLevel(get()) : null;
  const level = newLevel(plan, where);
  const add = (now: Plan) =>
    beside ? withLevelBeside(now, level, where, beside.id) : withNewLevel(now, { ...level, order: 0 });
  if (get().run(add)) return;
  get().setLevel(level.id);
  if (beside) get().say(addedWords(level, beside, where));
}

function stepLevel(get: GetState, where: Beside): void {
  const levels = levelsInOrder(get().plan);
  const at = levels.findIndex(({ id }) => id === selectLevel(get()).id);
  const next = levels[where === 'above' ? at + 1 : at - 1];
  if (next) get().setLevel(next.id);
  else get().say(`${levelHeading(selectLevel(get()))} is the ${where === 'above' ? 'highest' : 'lowest'} level.`);
}

/** Runs an edit of the order and shows a message of the level's new place, or `standsStill` if nothing changed. */
function reorder(get: GetState, edit: (plan: Plan, id: string) => Plan, standsStill: string): void {
  const { id } = selectLevel(get());
  const before = get().plan;
  const reason = get().run((plan) => edit(plan, id));
  if (!reason) get().say(get().plan === before ? standsStill : placeWords(get().plan, id));
}

function deleteLevel(get: GetState, levelId: string): void {
  const { plan } = get();
  const level = plan.levels.find(({ id }) => id === levelId);
  if (!level) return;
  if (plan.levels.length < 2) {
    get().say(`${levelHeading(level)} is the only level. Add another one before you delete it.`);
    return;
  }
  get().endChain();
  const next = neighbor(plan, levelId);
  if (get().run((now) => withOrdersFromZero(withoutLevel(now, levelId)))) return;
  get().setLevel(get().levelId === levelId ? next : get().levelId);
  get().say([goneWords(level), recordsGone(plan, get().plan)].filter(Boolean).join(' '));
}

function showThings(set: SetState, get: GetState, levelId: string, ids: readonly string[], at: XY | null): void {
  if (selectLevel(get()).id !== levelId) get().setLevel(levelId);
  set({ tool: SELECT_TOOL, selection: ids });
  const extent = at ? extentBetween(at, at) : itemsExtent(selectLevel(get()), ids);
  const { viewport, stageSize } = get();
  const shown = extent ? showing(viewport, extent, stageSize) : viewport;
  if (shown !== viewport) get().setViewport(shown);
}

function newLevel(plan: Plan, where: Beside): Level {
  const taken = new Set(plan.levels.map(({ name }) => name.trim()));
  const name = NAMES[where].find((each) => !taken.has(each)) ?? `Level ${plan.levels.length + 1}`;
  // Counts as lived in until it is answered: a choice of the level to test that is too strict is noticed at once, one that is too lax is
  // not.
  const ground = where === 'above' ? 'none' : 'basement';
  return {
    ...emptyLevel(nextId(plan, 'L')),
    name,
    ground,
    ceilingAnswered: false,
    livingAnswered: false,
    groundAnswered: false,
  };
}

/** The level that is shown after one is deleted: the one below it, else the one above. */
function neighbor(plan: Plan, levelId: string): string {
  const levels = levelsInOrder(plan);
  const at = levels.findIndex(({ id }) => id === levelId);
  return (levels[at - 1] ?? levels[at + 1])?.id ?? '';
}
