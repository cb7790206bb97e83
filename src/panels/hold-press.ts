import type { PointerEvent } from 'react';

/**
 * A press takes hold of the button that it began on. Leaving a field writes it down, and what that changes above moves the button
 * away before the finger lifts: without this the press would end on something else and do nothing.
 */
export function holdPress({ target, pointerId }: PointerEvent): void {
  if (target instanceof Element) target.closest('button, summary')?.setPointerCapture(pointerId);
}
