/** Whether the finger is what this device is mostly worked with: targets are then as large as a fingertip. */
const byFinger = typeof window === 'undefined' ? null : window.matchMedia('(pointer: coarse)');

/** The least breadth and height of anything that is to be pressed, px: WCAG 2.2 asks 24, a gloved finger 44. */
export function leastTargetPx(): number {
  return byFinger?.matches ? 44 : 24;
}
