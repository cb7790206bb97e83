import type { TapedBy } from '../dimension/taped-by.ts';

/** Names the three ways to tape a length between walls. */
export const TAPED_BY_NAME: Readonly<Record<TapedBy, string>> = {
  inside: 'Inside face to face',
  outside: 'Outside face to face',
  center: 'Center to center',
};

/** The words after a length that say how it is taped: "34 ft 2 in outside". */
export const TAPED_BY_WORDS: Readonly<Record<TapedBy, string>> = {
  inside: 'inside',
  outside: 'outside',
  center: 'center to center',
};
