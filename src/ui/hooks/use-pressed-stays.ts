import { type RefObject, useEffect } from 'react';

/**
 * Keeps what is pressed in a scroller in its place (see `keep-pressed.ts`, which the start does without).
 * @param on whether the scroller is shown
 */
export function usePressedStays(scroller: RefObject<HTMLElement | null>, on = true): void {
  useEffect(() => {
    const { current: pane } = scroller;
    if (!pane || !on) return;
    let stop: (() => void) | null = null;
    let ended = false;
    import('./keep-pressed.ts').then(
      ({ keepPressed }) => {
        if (!ended) stop = keepPressed(pane);
      },
      // Without it a press may move: nothing else depends on it.
      () => undefined,
    );
    return () => {
      ended = true;
      stop?.();
    };
  }, [scroller, on]);
}
