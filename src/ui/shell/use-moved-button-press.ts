import { useEffect } from 'react';

/** Maximum distance between press and release that still counts as a click, px. */
const CLICK_PX = 12;

/**
 * Sends a click to the button on which the press began. Leaving a field commits it, which may move the button away before the release: the
 * browser then sends the click to a common ancestor, and nothing would happen.
 */
export function useMovedButtonPress(): void {
  useEffect(() => {
    let held: { readonly button: HTMLElement; readonly x: number; readonly y: number } | null = null;
    const onDown = ({ target, clientX: x, clientY: y }: PointerEvent) => {
      const button = target instanceof Element ? target.closest<HTMLElement>('button, summary') : null;
      held = button && { button, x, y };
    };
    const onClick = (event: MouseEvent) => {
      const press = held;
      held = null;
      if (!press?.button.isConnected || press.button.contains(event.target as Node)) return;
      if (Math.hypot(event.clientX - press.x, event.clientY - press.y) > CLICK_PX) return;
      event.stopPropagation();
      event.preventDefault();
      press.button.click();
    };
    const release = () => {
      held = null;
    };
    document.addEventListener('pointerdown', onDown, true);
    document.addEventListener('pointercancel', release, true);
    document.addEventListener('click', onClick, true);
    return () => {
      document.removeEventListener('pointerdown', onDown, true);
      document.removeEventListener('pointercancel', release, true);
      document.removeEventListener('click', onClick, true);
    };
  }, []);
}
