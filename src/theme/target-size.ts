/** Whether the primary pointer is coarse: targets are then as large as a fingertip. */
const byFinger = typeof window === 'undefined' ? null : window.matchMedia('(pointer: coarse)');

/** Returns the minimum width and height of a pointer target, px: WCAG 2.2 requires 24, a gloved finger needs 44. */
export function minTargetPx(): number {
  return byFinger?.matches ? 44 : 24;
}

/** Returns the distance from one line of dimensions to the next, px: their figures are pointer targets. */
export const dimensionStepPx = (): number => minTargetPx() + 2;
