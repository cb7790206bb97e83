// Kept, because making a query in every frame of a drag takes longer than asking this one.
const coarse = globalThis.matchMedia?.('(pointer: coarse)');

/** Whether the main pointer of this device is a finger: targets are then as large as a fingertip. */
export const isMainlyTouch = (): boolean => coarse?.matches ?? false;

/** Returns the minimum width and height of a pointer target, px: WCAG 2.2 requires 24, a gloved finger needs 44. */
export function minTargetPx(): number {
  return isMainlyTouch() ? 44 : 24;
}

/** Returns the distance from one line of dimensions to the next, px: their figures are pointer targets. */
export const dimensionStepPx = (): number => minTargetPx() + 2;
