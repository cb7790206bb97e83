import { useEffect } from 'react';

/** A finger that lifts within this of where it came down still presses, px. */
const CLICK_PX = 12;

/**
 * Gives a click to the button that the press began on. Leaving a field commits it, which may move the button away before the
 * press ends: the browser then gives the click to a common ancestor, and nothing would happen.
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
