import { create } from 'zustand';
import { openMadePlan } from '../../commands/open-and-save.ts';
import { answersOf, type CardAnswers, NO_ANSWERS } from '../../quick-card/answers.ts';
import { quickPlan } from '../../quick-card/make-plan.ts';
import { freshPlan } from '../../state/fresh-plan.ts';
import { useAppStore } from '../../state/store.ts';
import { readSetting, writeSetting } from '../../storage/settings.ts';

interface QuickCardState {
  readonly answers: CardAnswers;
  /** Whether the questions are shown, else the card. */
  readonly asks: boolean;
  /** Whether the answers are those of the open plan, which is then made again; else they make a new plan. */
  readonly remakes: boolean;
}

/** The answers while they are given. They are stored with every press: a reload loses none. */
export const useQuickCard = create<QuickCardState>()(() => ({ answers: NO_ANSWERS, asks: true, remakes: false }));

const SETTING = 'quick-card';

/** Changes answers. */
export function answer(change: Partial<CardAnswers>): void {
  const answers = { ...useQuickCard.getState().answers, ...change };
  useQuickCard.setState({ answers });
  void writeSetting(SETTING, answers);
}

/** Shows the card of the open plan, or the questions where it has none: those that were answered last time are answered still. */
export async function beginQuickCard(): Promise<void> {
  const made = answersOf(useAppStore.getState().plan);
  useQuickCard.setState({ answers: made ?? NO_ANSWERS, asks: made === null, remakes: false });
  if (made) return;
  const stored = await readSetting(SETTING);
  // Read with the same care as the answers in a plan.
  const read = answersOf({ ...useAppStore.getState().plan, ...{ quickCard: stored } });
  if (read && useQuickCard.getState().answers === NO_ANSWERS) useQuickCard.setState({ answers: read });
}

/**
 * Makes the plan of the answers and shows its card: a new plan of the library, or the open one again. Returns why not, in
 * words; empty when it is made.
 */
export async function makeCard(now: number): Promise<string> {
  const { answers, remakes } = useQuickCard.getState();
  const fresh = freshPlan();
  if (remakes) {
    const { levels, kit } = fresh;
    const refusal = useAppStore.getState().run((open) => quickPlan({ ...open, levels, kit }, answers, now));
    if (refusal) return refusal;
  } else await openMadePlan(quickPlan(fresh, answers, now));
  void writeSetting(SETTING, null);
  useQuickCard.setState({ asks: false });
  return '';
}

/** Begins another card, with the same leaflet: the open plan stays in the library. */
export function anotherCard(): void {
  const { leaflet, unit } = answersOf(useAppStore.getState().plan) ?? NO_ANSWERS;
  useQuickCard.setState({ answers: { ...NO_ANSWERS, leaflet, unit }, asks: true, remakes: false });
}

/** Shows the questions with the answers of the open plan, to make its card again. */
export function changeAnswers(): void {
  useQuickCard.setState({
    answers: answersOf(useAppStore.getState().plan) ?? NO_ANSWERS,
    asks: true,
    remakes: true,
  });
}
