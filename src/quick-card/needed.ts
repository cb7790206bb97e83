import type { CardAnswers } from './answers.ts';

/** A question that must be answered before a spot can be found. */
export type NeededAnswer = 'level' | 'use' | 'size';

/** Returns the questions that are not answered and must be for a spot. */
export function neededAnswers({ level, use, across, along }: CardAnswers): readonly NeededAnswer[] {
  return [
    ...(level === null ? (['level'] as const) : []),
    ...(use === null ? (['use'] as const) : []),
    ...(across === null || along === null ? (['size'] as const) : []),
  ];
}

/** For the middle of a sentence. */
export const NEEDED_WORDS: Readonly<Record<NeededAnswer, string>> = {
  level: 'the floor of the house',
  use: 'the use of the room',
  size: 'its two lengths',
};
