import type { ConditionState } from '../../../geometry/plan/model.ts';

/** The answers to an item, in the order in which they are offered. */
export const ANSWERS: readonly { readonly state: ConditionState; readonly words: string }[] = [
  { state: 'kept', words: 'Kept' },
  { state: 'broken', words: 'Broken' },
  { state: 'not-applicable', words: 'None here' },
  { state: 'unknown', words: 'Not known' },
];

export const answerWords = (state: ConditionState): string =>
  ANSWERS.find((each) => each.state === state)?.words ?? state;
