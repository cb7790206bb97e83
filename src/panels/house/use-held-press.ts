import { type PointerEvent, useEffect, useRef } from 'react';

/** A finger that lifts so far from where it came down meant to press after all, px. */
const SLIP = 12;

interface Press {
  readonly button: HTMLElement;
  readonly x: number;
  readonly y: number;
}

/**
 * A press belongs to the button that it began on. Leaving a field writes it down, and what that changes above moves the button away
 * before the press ends: the browser then gives the click to whatever holds both, and nothing happens. Answers what listens for presses.
 */
export function useHeldPress(): (event: PointerEvent) => void {
  const held = useRef<Press | null>(null);
  useEffect(() => {
    const onClick = (event: MouseEvent) => {
      const press = held.current;
      held.current = null;
      if (!press?.button.isConnected || press.button.contains(event.target as Node)) return;
      if (Math.hypot(event.clientX - press.x, event.clientY - press.y) > SLIP) return;
      event.stopPropagation();
      event.preventDefault();
      press.button.click();
    };
    const letGo = () => {
      held.current = null;
    };
    document.addEventListener('click', onClick, true);
    document.addEventListener('pointercancel', letGo);
    return () => {
      document.removeEventListener('click', onClick, true);
      document.removeEventListener('pointercancel', letGo);
    };
  }, []);
  return ({ target, clientX, clientY }) => {
    const button = target instanceof Element ? target.closest<HTMLElement>('button, summary') : null;
    held.current = button && { button, x: clientX, y: clientY };
  };
}
