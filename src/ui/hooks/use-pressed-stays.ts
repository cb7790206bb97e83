import { type RefObject, useEffect } from 'react';

/**
 * Keeps a pressed control of a scroller in place (see `keep-pressed.ts`, which is not part of the start bundle).
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
      // Without it a pressed control may move; nothing else depends on it.
      () => undefined,
    );
    return () => {
      ended = true;
      stop?.();
    };
  }, [scroller, on]);
}
