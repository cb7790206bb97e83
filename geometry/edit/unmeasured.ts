import type { Mm } from '../plan/model.ts';

/** Underside and top above the floor, mm. */
export interface Upright {
  readonly bottom: Mm;
  readonly top: Mm;
}

/** The marks of heights that nobody has measured. A height of 0 gets no mark, because anybody can see that the thing is on the floor. */
export interface UnmeasuredHeights {
  readonly bottomAnswered?: false;
  readonly topAnswered?: false;
}

/** Returns the marks for a thing whose heights are copied from another thing or are the usual ones. */
export function unmeasuredHeights({ bottom, top }: Upright): UnmeasuredHeights {
  return { ...(bottom === 0 ? {} : { bottomAnswered: false }), ...(top === 0 ? {} : { topAnswered: false }) };
}
