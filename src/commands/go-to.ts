import { capital, ROOM_USE_NOUN } from '../../geometry/messages/index.ts';
import type { RoomUse, XY } from '../../geometry/plan/model.ts';
import type { HintAction, ItemField } from '../advice/guidance/hint.ts';
import type { Stage } from '../advice/stages.ts';
import type { QuestionId } from '../advice/walk-round.ts';
import { keepInView } from '../editor/stage/keep-in-view.ts';
import { setAtWall } from '../state/out-of-wall.ts';
import { selectLevel } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { withLateEdits } from './late-edits.ts';
import { foldAll, isPhonePage, openQuestion, openStage, showPlan, unfold, usePanels } from './panels.ts';

export const TITLE_FIELD = 'plan-title';
export const PURPOSE_FIELD = 'site-purpose';
export const LATITUDE_FIELD = 'site-latitude';
export const NORTH_FIELD = 'site-north';
/** Returns the id of a field of the selected thing. */
export const itemFieldId = (field: ItemField): string => `item-${field}`;
/** Id of the first answer to the question what a detector rests on. */
export const SUPPORT_ANSWER = 'support-answer';
/** Returns the id of the answer "none here" for a rule. */
export const noneHereId = (rule: string): string => `none-here-${rule}`;
export const livingFieldId = (levelId: string): string => `living-${levelId}`;
/** Id of the group of the levels in the job column. */
export const LEVELS_GROUP = 'levels-group';

/**
 * Asks for the use of the room at `at`, mm, in a box beside it; the picked use names the room. No use is assumed, since the use decides
 * whether a detector may be placed there.
 */
export function nameRoom(at: XY): void {
  showPlan();
  // An open column would cover the room.
  if (isPhonePage()) foldAll();
  useAppStore.getState().setTool(SELECT_TOOL);
  keepInView(at);
  useAppStore.getState().askRoom(at);
}

/** Names the room that was asked about; without one, chooses the tool that names the next pressed room. */
export function pickUse(use: RoomUse): void {
  const { addItem, setTool, roomAsked, askRoom } = useAppStore.getState();
  if (!roomAsked) {
    setTool({ kind: 'room', use });
    return;
  }
  addItem('rooms', { name: capital(ROOM_USE_NOUN[use]), use, at: roomAsked });
  askRoom(null);
}

/** Carries out the action that a hint offers, on the level of the hint. */
export function followHint(offer: HintAction): void {
  const { setTool, showThings } = useAppStore.getState();
  if ('levelId' in offer) comeTo(offer.levelId);
  switch (offer.kind) {
    case 'tool':
      setTool(offer.tool);
      openStage(offer.tool.kind === 'detector' ? 'place' : 'draw');
      if (offer.tool.kind !== 'detector') openQuestion('closes');
      return;
    case 'show':
      showPlan();
      showThings(offer.levelId, offer.ids, offer.at);
      if (offer.field) goToItemField(offer.field);
      return;
    case 'question':
      goToQuestion(offer.question, offer.rule);
      return;
    case 'unlock':
      useAppStore.getState().unlock(offer.ids);
      useAppStore.getState().say('');
      return;
    case 'tracing':
      if (offer.next === 'straighten') setTool({ kind: 'tracing', task: 'straighten' });
      else withLateEdits('tracing', ({ lockTracing }) => lockTracing(offer.levelId));
      return;
    case 'support':
      goToSupport(offer.levelId, offer.detectorId);
      return;
    case 'living':
      goToField('site', livingFieldId(offer.levelId));
      return;
    case 'name-room':
      // The view is kept if the room is in it: enlarged around its label, a room would not be recognized.
      useAppStore.getState().select([]);
      nameRoom(offer.at);
      return;
    case 'out-of-wall':
      setAtWall(offer.levelId, offer.id);
      return;
    case 'one-wall':
      withLateEdits('walls', ({ makeOneWall }) => makeOneWall(...offer.ids));
      return;
    case 'mend-gap':
      showThings(offer.levelId, [], offer.notice.at);
      withLateEdits('walls', ({ mendGap }) => mendGap(offer.notice));
      return;
    case 'level':
      showLevels();
      return;
    case 'stage':
      unfold('job');
      openStage(offer.stage);
      return;
    case 'field':
      if (offer.field === 'title') document.getElementById(TITLE_FIELD)?.focus();
      else if (offer.field === 'purpose') goToField('site', PURPOSE_FIELD);
      else goToField('site', offer.field === 'north' ? NORTH_FIELD : LATITUDE_FIELD);
  }
}

/** Opens a question of the walk round and focuses its answer "none here". */
export function goToQuestion(question: QuestionId, rule: string): void {
  useAppStore.getState().setTool(SELECT_TOOL);
  unfold('job');
  openStage('draw');
  usePanels.setState({ question });
  focusWhenThere([noneHereId(rule), `question-${question}`]);
}

/** Selects a detector and focuses the answers to what it rests on, in the verdict column. */
function goToSupport(levelId: string, detectorId: string): void {
  showPlan();
  useAppStore.getState().showThings(levelId, [detectorId]);
  unfold('side');
  focusWhenThere([SUPPORT_ANSWER]);
}

/** Focuses a field of the selected thing, in the verdict column: on a small page both lie below what is in view. */
function goToItemField(field: ItemField): void {
  unfold('side');
  focusWhenThere([itemFieldId(field)], 'center');
}

function goToField(stage: Stage, id: string): void {
  unfold('job');
  openStage(stage);
  focusWhenThere([id]);
}

/** Number of frames to wait for a part of the page: some parts are loaded when they are first shown. */
const FRAMES = 120;

/** Calls `does` with the first of these elements that is on the page, as soon as there is one; never if none appears in time. */
function whenThere(ids: readonly string[], does: (found: HTMLElement) => void, frames = FRAMES): void {
  requestAnimationFrame(() => {
    const found = ids.map((id) => document.getElementById(id)).find((each) => each !== null);
    if (found) does(found);
    else if (frames > 0) whenThere(ids, does, frames - 1);
  });
}

/** Scrolls a question of the walk round into view, with its answers, once it is open. Does not scroll if its name is in view. */
export function showQuestion(question: QuestionId): void {
  whenThere([`question-${question}`], (name) => {
    const { top } = name.getBoundingClientRect();
    name.scrollIntoView({ block: 'nearest' });
    if (name.getBoundingClientRect().top === top) return;
    name.closest('.question')?.scrollIntoView({ block: 'nearest' });
    name.scrollIntoView({ block: 'nearest' });
  });
}

function focusWhenThere(ids: readonly string[], block: ScrollLogicalPosition = 'nearest'): void {
  whenThere(ids, (found) => {
    found.focus();
    found.scrollIntoView({ block });
  });
}

function comeTo(levelId: string): void {
  const state = useAppStore.getState();
  if (selectLevel(state).id !== levelId) state.setLevel(levelId);
}

/** Opens the group of the levels and focuses it. */
function showLevels(): void {
  unfold('job');
  openStage('draw');
  whenThere([LEVELS_GROUP], (group) => {
    if (group instanceof HTMLDetailsElement) group.open = true;
    group.querySelector('summary')?.focus();
    group.scrollIntoView({ block: 'start' });
  });
}
