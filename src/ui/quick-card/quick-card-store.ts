import { create } from 'zustand';
import type { Plan } from '../../../geometry/plan/model.ts';
import { openMadePlan } from '../../commands/open-and-save.ts';
import { answersOf, type CardAnswers, type GroupId, NO_ANSWERS } from '../../quick-card/answers.ts';
import { answersNow } from '../../quick-card/made-again.ts';
import { quickPlan } from '../../quick-card/make-plan.ts';
import { freshPlan } from '../../state/fresh-plan.ts';
import { useAppStore } from '../../state/store.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { readSetting, writeSetting } from '../../storage/settings.ts';

interface QuickCardState {
  readonly answers: CardAnswers;
  /** Null while stored answers are being read. */
  readonly shows: 'questions' | 'card' | null;
  /** Whether the answers are those of the open plan, which is then made again; otherwise they make a new plan. */
  readonly remakes: boolean;
  /** Whether the questions started with earlier answers from which no card was made. */
  readonly isResumed: boolean;
  /** The question to start at; null for the top of the page. */
  readonly goTo: GroupId | 'support' | null;
}

/** The answers that are being given. They are stored with every press, so that a reload loses none. */
export const useQuickCard = create<QuickCardState>()(() => ({
  answers: NO_ANSWERS,
  shows: null,
  remakes: false,
  isResumed: false,
  goTo: null,
}));

/** Settings with answers from which no card was made yet: those for a new card, and those that change the card of one plan. */
const NEW_CARD = 'quick-card';
const CHANGED_CARD = 'quick-card-changed';

/** The stored change of a card. Valid only while the plan has the answers from which the change started. */
interface Changed {
  readonly plan: string;
  readonly from: CardAnswers;
  readonly answers: CardAnswers;
}

/** Changes answers and stores them. */
export function answer(change: Partial<CardAnswers>): void {
  const { answers: before, remakes } = useQuickCard.getState();
  const answers = { ...before, ...change };
  useQuickCard.setState({ answers });
  const from = answersOfOpenPlan();
  if (!remakes) void writeSetting(NEW_CARD, answers);
  else if (from) {
    const changed: Changed = { plan: useLibrary.getState().openId, from, answers };
    void writeSetting(CHANGED_CARD, changed);
  }
}

/** Returns the answers of the current state of the open plan; null if it has no card. */
const answersOfOpenPlan = (): CardAnswers | null => answersNow(useAppStore.getState().plan);

/** Returns stored answers, validated like those in a plan; null for none. */
const read = (stored: unknown): CardAnswers | null =>
  answersOf({ ...useAppStore.getState().plan, ...{ quickCard: stored } });

const isSame = (a: CardAnswers | null, b: CardAnswers | null): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Returns the initial answers of another card: the leaflet is usually the same. */
function blank(): CardAnswers {
  const { leaflet, unit } = answersOfOpenPlan() ?? NO_ANSWERS;
  return { ...NO_ANSWERS, leaflet, unit };
}

/** Returns the stored answers for a new card; null if nothing was answered. */
async function storedForNew(): Promise<CardAnswers | null> {
  const stored = read(await readSetting(NEW_CARD));
  return isSame(stored, blank()) ? null : stored;
}

/** Returns the stored answers that change the card of the open plan; null for none. */
async function storedChange(): Promise<CardAnswers | null> {
  const stored = (await readSetting(CHANGED_CARD)) as Partial<Changed> | null | undefined;
  if (stored?.plan !== useLibrary.getState().openId) return null;
  return isSame(read(stored.from), answersOfOpenPlan()) ? read(stored.answers) : null;
}

/**
 * Shows the questions with the answers from which no card was made yet: those that change the open plan, else those for a new card. Without
 * such answers, shows the card of the open plan, or the empty questions if it has none.
 */
export async function beginQuickCard(): Promise<void> {
  useQuickCard.setState({ shows: null });
  const [changed, another] = await Promise.all([storedChange(), storedForNew()]);
  if (changed)
    useQuickCard.setState({ answers: changed, shows: 'questions', remakes: true, isResumed: true, goTo: null });
  else if (another)
    useQuickCard.setState({ answers: another, shows: 'questions', remakes: false, isResumed: true, goTo: null });
  else if (answersOfOpenPlan()) showCard();
  else begin(NO_ANSWERS, false);
}

const begin = (answers: CardAnswers, remakes: boolean, goTo: QuickCardState['goTo'] = null): void =>
  useQuickCard.setState({ answers, shows: 'questions', remakes, isResumed: false, goTo });

/** Shows the card of the open plan, and discards changes of its answers that were not made into a card. */
export function showCard(): void {
  if (useQuickCard.getState().remakes) void writeSetting(CHANGED_CARD, null);
  useQuickCard.setState({ shows: 'card', remakes: false });
}

/** Returns the plan to which the answers are added. */
export const basePlan = (): Plan => (useQuickCard.getState().remakes ? useAppStore.getState().plan : freshPlan());

/**
 * Makes a plan from the answers and shows its card: a new plan of the library, or the open one again. Returns why it was refused, in words;
 * empty if it was made. `now` is in ms since 1970.
 */
export async function makeCard(now: number): Promise<string> {
  const { answers, remakes } = useQuickCard.getState();
  const made = quickPlan(basePlan(), answers, now);
  if (remakes) {
    const refusal = useAppStore.getState().run(() => made);
    if (refusal) return refusal;
  } else {
    await openMadePlan(made);
    void writeSetting(NEW_CARD, null);
  }
  showCard();
  return '';
}

/** Starts another card with the same leaflet, or continues the last one that was started. The open plan stays in the library. */
export async function anotherCard(): Promise<void> {
  const stored = await storedForNew();
  if (stored)
    useQuickCard.setState({ answers: stored, shows: 'questions', remakes: false, isResumed: true, goTo: null });
  else begin(blank(), false);
}

/** Shows the questions with the answers of the open plan, to make its card again; `goTo` is the question to start at. */
export function changeAnswers(goTo: QuickCardState['goTo'] = null): void {
  begin(answersOfOpenPlan() ?? NO_ANSWERS, true, goTo);
}

/** Discards the answers given since: starts with those of the open plan, or for a new card with those of the leaflet. */
export function beginAgain(): void {
  const { remakes } = useQuickCard.getState();
  void writeSetting(remakes ? CHANGED_CARD : NEW_CARD, null);
  if (remakes) changeAnswers();
  else begin(blank(), false);
}
