import type { Mm } from '../plan/model.ts';

/** From and to above the floor, mm. */
export interface Upright {
  readonly bottom: Mm;
  readonly top: Mm;
}

/** The marks of heights that nobody has measured; what is on the floor is there for all to see. */
export interface UnmeasuredHeights {
  readonly bottomAnswered?: false;
  readonly topAnswered?: false;
}

/** Returns the marks of a thing whose heights are those of another one, or usual ones. */
export function unmeasuredHeights({ bottom, top }: Upright): UnmeasuredHeights {
  return { ...(bottom === 0 ? {} : { bottomAnswered: false }), ...(top === 0 ? {} : { topAnswered: false }) };
}
