import type { Notice } from '../level/types.ts';

/** Kinds of notices that `mendedGap` can fix. */
export const MENDABLE: readonly Notice['kind'][] = ['gap-open', 'gap-closed', 'overshoot'];
