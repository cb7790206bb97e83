import { levelBar } from '../../geometry/check/level.ts';
import {
  type Beside,
  levelBelow,
  levelsBeside,
  levelsInOrder,
  nextId,
  wallsCopied,
  withLevelAtHeightOf,
  withLevelBeside,
  withLevelMoved,
  withNewLevel,
  withOrdersFromZero,
  withoutLevel,
} from '../../geometry/edit/index.ts';
import { ITEM_LISTS } from '../../geometry/edit/listed-items.ts';
import { outsideWallIds } from '../../geometry/level/outdoors.ts';
import { capital, counted, GROUND_PHRASE, listed } from '../../geometry/messages/index.ts';
import { levelName } from '../../geometry/messages/subject.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import { itemsExtent } from '../../geometry/snap/items-extent.ts';
import { extentBetween } from '../../geometry/snap/pick.ts';
import type { GetState, LevelActions, SetState } from './app-state.ts';
import { modelOf, selectLevel } from './selectors.ts';
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
  const setLevel = (levelId: string) => {
    get().endChain();
    set({
      draft: null,
      live: null,
      chain: NO_CHAIN,
      message: '',
      levelId,
      selection: [],
      hover: null,
      tool: SELECT_TOOL,
    });
    // Who looks closely at one corner of the house goes on looking there.
    if (get().wholeInView || !showsAnyOf(get())) get().fit();
  };
  /** Runs an edit of the order and says where the level lies then. */
  const reorder = (edit: (plan: Plan, id: string) => Plan, standsStill: string) => {
    const { id } = selectLevel(get());
    const before = get().plan;
    const reason = get().run((plan) => edit(plan, id));
    if (!reason) get().say(get().plan === before ? standsStill : placeWords(get().plan, id));
  };
  return {
    setLevel,
    addLevel: (where = 'above') => {
      const { plan } = get();
      const beside = plan.levels.length > 0 ? selectLevel(get()) : null;
      const level = newLevel(plan, where);
      const add = (now: Plan) =>
        beside ? withLevelBeside(now, level, where, beside.id) : withNewLevel(now, { ...level, order: 0 });
      if (get().run(add)) return;
      setLevel(level.id);
      if (beside) get().say(addedWords(level, beside, where));
    },
    stepLevel: (where) => {
      const levels = levelsInOrder(get().plan);
      const at = levels.findIndex(({ id }) => id === selectLevel(get()).id);
      const next = levels[where === 'above' ? at + 1 : at - 1];
      if (next) setLevel(next.id);
      else get().say(`${levelName(selectLevel(get()))} is the ${where === 'above' ? 'highest' : 'lowest'} level.`);
    },
    moveLevel: (where) => {
      const end = where === 'above' ? 'highest' : 'lowest';
      reorder((plan, id) => withLevelMoved(plan, id, where), `${levelName(selectLevel(get()))} is the ${end} level.`);
    },
    putLevelWith: (otherId) =>
      reorder((plan, id) => withLevelAtHeightOf(plan, id, otherId), 'They lie at one height already.'),
    copyOutline: (fromId, choice) => {
      get().endChain();
      const { plan } = get();
      const target = selectLevel(get());
      const source = plan.levels.find(({ id }) => id === fromId);
      if (!source) return;
      const walls = choice.insideWalls ? new Set(source.walls.map(({ id }) => id)) : outsideWallIds(modelOf(source));
      const copied = wallsCopied(plan, fromId, target.id, walls, choice.openings);
      const bare = target.walls.length === 0;
      const reason = get().run(() => copied);
      if (reason || !copied.ok) return;
      if (bare) get().fit();
      get().say(copiedWords(source, walls.size, copied));
    },
    deleteLevel: (levelId) => {
      const { plan } = get();
      const level = plan.levels.find(({ id }) => id === levelId);
      if (!level) return;
      if (plan.levels.length < 2) {
        get().say(`${levelName(level)} is the only level. Add another one before you delete it.`);
        return;
      }
      get().endChain();
      const next = neighbor(plan, levelId);
      if (get().run((now) => withOrdersFromZero(withoutLevel(now, levelId)))) return;
      setLevel(get().levelId === levelId ? next : get().levelId);
      get().say(goneWords(level));
    },
    showThings: (levelId, ids, at = null) => {
      if (selectLevel(get()).id !== levelId) setLevel(levelId);
      set({ tool: SELECT_TOOL, selection: ids });
      const extent = at ? extentBetween(at, at) : itemsExtent(selectLevel(get()), ids);
      const { viewport, stageSize } = get();
      const shown = extent ? showing(viewport, extent, stageSize) : viewport;
      if (shown !== viewport) get().setViewport(shown);
    },
  };
}

function newLevel(plan: Plan, where: Beside): Level {
  const taken = new Set(plan.levels.map(({ name }) => name.trim()));
  const name = NAMES[where].find((each) => !taken.has(each)) ?? `Level ${plan.levels.length + 1}`;
  // Lived in until someone answers: too strict a choice of the level to test shows at once, too lax a one does not.
  const ground = where === 'above' ? 'none' : 'basement';
  return { ...emptyLevel(nextId(plan, 'L')), name, ground, livingAnswered: false };
}

function addedWords(level: Level, beside: Level, where: Beside): string {
  const added = `${level.name} is added ${where} ${levelName(beside)}.`;
  if (where === 'above' || beside.ground === 'none') return `${added} Say whether it is lived in.`;
  return `${added} ${levelName(beside)} is noted as ${GROUND_PHRASE[beside.ground]}: look whether that still holds.`;
}

/** Where the level lies now, and whether it is the one to test there. */
function placeWords(plan: Plan, levelId: string): string {
  const level = plan.levels.find(({ id }) => id === levelId);
  if (!level) return '';
  return `${levelName(level)} ${lieWords(plan, levelId)} now. ${capital(levelBar(plan, level)) || 'It is a level to test.'}`;
}

function lieWords(plan: Plan, levelId: string): string {
  const beside = levelsBeside(plan, levelId);
  if (beside.length > 0) return `lies at the height of ${listed(beside.map(levelName))}`;
  const under = levelBelow(plan, levelId);
  return under ? `lies above ${levelName(under)}` : 'is the lowest level';
}

function copiedWords(source: Level, asked: number, { walls, openings }: { walls: number; openings: number }): string {
  if (asked === 0) return `${levelName(source)} has no closed outline yet. Close its walls, then copy them.`;
  if (walls === 0) return `Every one of these walls of ${levelName(source)} stands here already.`;
  const what = listed([counted(walls, 'wall'), openings > 0 ? counted(openings, 'opening') : ''].filter(Boolean));
  return `${capital(what)} copied from ${levelName(source)}. Look with the tape whether ${walls === 1 ? 'it stands' : 'they stand'} so here.`;
}

function goneWords(level: Level): string {
  const things = ITEM_LISTS.reduce((sum, list) => sum + level[list].length, 0);
  const parts = [things > 0 ? counted(things, 'thing') : '', level.tracing ? 'its picture' : ''].filter(Boolean);
  return `${levelName(level)}${parts.length > 0 ? ` with ${listed(parts)}` : ''} is gone. Undo brings it back.`;
}

/** What comes into view when a level goes: the one below it, else the one above. */
function neighbor(plan: Plan, levelId: string): string {
  const levels = levelsInOrder(plan);
  const at = levels.findIndex(({ id }) => id === levelId);
  return (levels[at - 1] ?? levels[at + 1])?.id ?? '';
}
