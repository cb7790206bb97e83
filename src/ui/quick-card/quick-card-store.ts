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
}

/** The answers while they are given. They are stored with every press: a reload loses none. */
export const useQuickCard = create<QuickCardState>()(() => ({ answers: NO_ANSWERS, asks: true }));

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
  useQuickCard.setState({ answers: made ?? NO_ANSWERS, asks: made === null });
  if (made) return;
  const stored = await readSetting(SETTING);
  // Read with the same care as the answers in a plan.
  const read = answersOf({ ...useAppStore.getState().plan, ...{ quickCard: stored } });
  if (read && useQuickCard.getState().answers === NO_ANSWERS) useQuickCard.setState({ answers: read });
}

/** Makes the plan of the answers and shows its card: a new plan of the library, or the open one again where a card made it. */
export async function makeCard(now: number): Promise<void> {
  const { answers } = useQuickCard.getState();
  const state = useAppStore.getState();
  if (answersOf(state.plan)) state.run((open) => quickPlan({ ...freshPlan(), site: open.site }, answers, now));
  else await openMadePlan(quickPlan(freshPlan(), answers, now));
  void writeSetting(SETTING, null);
  useQuickCard.setState({ asks: false });
}

/** Begins another card: the open plan stays in the library. */
export function anotherCard(): void {
  useQuickCard.setState({ answers: NO_ANSWERS, asks: true });
}
