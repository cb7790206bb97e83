import type { LevelModel, Notice } from '../../../geometry/level/types.ts';
import { counted, describeNotice, listed } from '../../../geometry/messages/index.ts';
import { describeUnmeasuredWalls } from '../../../geometry/messages/unmeasured-walls.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { levelHeading } from '../../../geometry/plan/nouns.ts';
import { looksOf } from '../walk-round.ts';
import { inWallRemark, inWalls, mendAction, oneWallAction } from '../wall-remarks.ts';
import { questionAction } from './answer-actions.ts';
import { type Hint, type HintAction, type SeenLevel, WEIGHT, withLevelName } from './hint.ts';

/** Weights of the notices on a drawing: those that keep a room from closing first, mere remarks last. */
const NOTICE_WEIGHT: Readonly<Record<Notice['kind'], number>> = {
  'gap-open': 0,
  'zero-length-wall': 1,
  'open-passage-outside': 2,
  'label-outside-rooms': 3,
  'labels-share-room': 4,
  'unlabelled-room': 5,
  'gap-closed': 6,
  overshoot: 7,
  'walls-overlap': 8,
  'walls-crowded': 8,
};
/** Notices that leave a part of the level without a verdict until they are settled. */
const NOTICE_MISSING: ReadonlySet<Notice['kind']> = new Set(['gap-open', 'label-outside-rooms', 'unlabelled-room']);

/** Returns hints about the drawing of the house and of its levels, the most important first. */
export function drawHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const hints = [...houseHints(plan, levels), ...levels.flatMap(levelHints)];
  return hints.sort((a, b) => a.weight - b.weight);
}

/** Returns what is drawn, in words: in full for one level, the rooms of each for several; empty for nothing. */
export function drawnInWords(levels: readonly SeenLevel[]): string {
  const drawn = levels.filter(({ model }) => model.level.walls.length > 0);
  const [only] = drawn;
  if (!only) return '';
  if (levels.length === 1) return `${partsOf(only.model)}.`;
  return `${drawn.map(({ model }) => `${model.level.name.trim() || 'No name'} ${roomsOf(model)}`).join(', ')}.`;
}

function houseHints({ site }: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const [lowest] = levels;
  if (!lowest) return [];
  const hints: Hint[] = [];
  const { level } = lowest.model;
  if (!levels.some(({ toTest }) => toTest)) {
    const inSale = site.purpose === 'property-transfer';
    const text = `No level is noted as lived in${inSale ? ' or fit to live in' : ''}, so none is to be tested. Select the one that is.`;
    const shown = levels.find(({ inView }) => inView) ?? lowest;
    const action: HintAction = { kind: 'level', label: 'Enter who lives where', levelId: shown.model.level.id };
    hints.push({ text, action, missing: true, weight: WEIGHT.noLevelToTest });
  }
  if (level.ground === 'none') {
    const name = levelHeading(level);
    hints.push({
      text: `${name} is the lowest level here and is ${level.groundAnswered === false ? 'not known to touch' : 'noted as not touching'} the soil. Add the level below it, or enter what is under its floor.`,
      action: { kind: 'level', label: 'Show the levels', levelId: level.id },
      missing: false,
      weight: WEIGHT.notOnGround,
    });
  }
  return hints;
}

function levelHints(seen: SeenLevel): readonly Hint[] {
  const { model, toTest, inView } = seen;
  const { level } = model;
  const counts = toTest || level.detectors.length > 0;
  if (!counts && !inView) return [];
  if (level.walls.length === 0) {
    const text = inView
      ? 'Nothing is drawn on this level yet.'
      : 'This is a level to test, and nothing is drawn on it yet.';
    const tool = { kind: 'room-box' } as const;
    const action: HintAction = { kind: 'tool', label: 'Four walls in one drag', levelId: level.id, tool };
    const words = withLevelName(seen, `${text} Start with the outline.`);
    return [{ text: words, action, missing: counts, weight: WEIGHT.notDrawn }];
  }
  const walked = level.ground !== 'crawlspace' || counts;
  return [
    ...closingHints(seen, counts),
    ...inWallHints(seen),
    ...thicknessHints(seen),
    ...(walked ? lookedForHints(seen, counts) : []),
  ];
}

/** Hints from the notices: walls that do not close a room, rooms without a use. */
function closingHints(seen: SeenLevel, counts: boolean): readonly Hint[] {
  const { plan, model } = seen;
  const { level, rooms, notices } = model;
  const hints = notices.map(
    (notice): Hint => ({
      text: withLevelName(seen, describeNotice(notice, plan.display.length, level)),
      action: noticeAction(notice, level.id),
      missing: counts && NOTICE_MISSING.has(notice.kind),
      weight: WEIGHT.drawing + NOTICE_WEIGHT[notice.kind],
    }),
  );
  if (rooms.length > 0 || notices.some(({ kind }) => kind === 'gap-open')) return hints;
  const text = withLevelName(seen, 'No room is closed yet. Draw the walls all the way round.');
  const action: HintAction = { kind: 'tool', label: 'Draw walls', levelId: level.id, tool: { kind: 'wall' } };
  return [{ text, action, missing: counts, weight: WEIGHT.drawing }, ...hints];
}

/** A hint about walls whose thickness is still the initial one, not measured. */
function thicknessHints(seen: SeenLevel): readonly Hint[] {
  const { plan, model } = seen;
  const { level, rooms } = model;
  const words = describeUnmeasuredWalls(level, plan.display.length);
  const first = level.walls.find(({ thicknessAnswered }) => thicknessAnswered === false);
  if (!first || rooms.length === 0) return [];
  const place = { levelId: level.id, ids: [first.id], at: null };
  const action: HintAction = { kind: 'show', label: 'Enter it', ...place, field: 'thickness' };
  return [{ text: withLevelName(seen, words), action, missing: false, weight: WEIGHT.thickness }];
}

/** Hints about things that reach into a wall. */
function inWallHints(seen: SeenLevel): readonly Hint[] {
  const { plan, model } = seen;
  return inWalls(model).map((found): Hint => {
    const { words, action } = inWallRemark(model.level, found, plan.display.length);
    const show: HintAction = { kind: 'show', label: 'Show it', levelId: model.level.id, ids: [found.id], at: null };
    return { text: withLevelName(seen, words), action: action ?? show, missing: false, weight: WEIGHT.inWall };
  });
}

function noticeAction(notice: Notice, levelId: string): HintAction {
  const { kind, at, ids } = notice;
  const mends = kind === 'walls-overlap' ? oneWallAction(notice, levelId) : mendAction(notice, levelId);
  if (mends) return mends;
  if (kind === 'unlabelled-room') return { kind: 'name-room', label: 'Name this room', levelId, at };
  return { kind: 'show', label: 'Show it', levelId, ids, at };
}

/** Hints about subjects that were not looked for yet, one for each question of the walk. Direct sun is asked for a spot, not here. */
function lookedForHints(seen: SeenLevel, counts: boolean): readonly Hint[] {
  const { plan, model, reports } = seen;
  if (model.rooms.length === 0) return [];
  const open = looksOf(plan, model, reports).filter(({ state, question }) => state === 'open' && question !== 'sun');
  const firsts = open.filter((row, index) => open.findIndex(({ question }) => question === row.question) === index);
  return firsts.map(({ question, rule }): Hint => {
    const names = open.filter((row) => row.question === question).map((row) => row.rule.name.toLowerCase());
    const text = withLevelName(seen, `Not looked for yet: ${listed(names)}. Add what is there, or answer "none here".`);
    const action = questionAction(model.level.id, question, rule.id);
    return { text, action, missing: counts, weight: WEIGHT.lookedFor };
  });
}

function roomsOf({ level, rooms }: LevelModel): string {
  return rooms.length > 0 ? counted(rooms.length, 'room') : counted(level.walls.length, 'wall');
}

function partsOf(model: LevelModel): string {
  const { level } = model;
  const things = level.fixtures.length + level.objects.length;
  const parts = [
    roomsOf(model),
    level.openings.length > 0 ? counted(level.openings.length, 'opening') : '',
    things > 0 ? counted(things, 'thing') : '',
  ].filter(Boolean);
  return listed(parts);
}
