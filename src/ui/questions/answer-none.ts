import { withLooksSigned, withNoneHere, withoutNoneHere } from '../../../geometry/edit/index.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';

/** Answers "none here" for a rule on the level in view, with name and time of the walk, as one step of history. */
export function answerNone(rule: string): void {
  useAppStore.getState().run((plan) => withNoneHere(plan, levelInView(), rule, useAppStore.getState().walk));
}

/** Withdraws the answer "none here": the rule is open again. */
export function takeBackNone(rule: string): void {
  useAppStore.getState().run((plan) => withoutNoneHere(plan, levelInView(), [rule]));
}

/** Adds name and time of the walk to the answers of the level in view that lack them. */
export function signLooks(): void {
  useAppStore.getState().run((plan) => withLooksSigned(plan, levelInView(), useAppStore.getState().walk));
}

const levelInView = (): string => selectLevel(useAppStore.getState()).id;
