import { withLooksSigned, withNoneHere, withoutNoneHere } from '../../../geometry/edit/index.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';

/** Answers "none here" for a rule on the level in view, with who and when of the walk: one step of history. */
export function answerNone(rule: string): void {
  useAppStore.getState().run((plan) => withNoneHere(plan, levelInView(), rule, useAppStore.getState().walk));
}

/** Takes the answer back: the rule is open again. */
export function takeBackNone(rule: string): void {
  useAppStore.getState().run((plan) => withoutNoneHere(plan, levelInView(), [rule]));
}

/** Puts who and when of the walk on the answers of the level in view that lack them. */
export function signLooks(): void {
  useAppStore.getState().run((plan) => withLooksSigned(plan, levelInView(), useAppStore.getState().walk));
}

const levelInView = (): string => selectLevel(useAppStore.getState()).id;
