import { useAppStore } from './store.ts';

/**
 * Returns whether a key press is a single letter, digit or sign that must be ignored. With voice input these keys can be turned off outside
 * of the sheet, so that dictated letters do nothing (WCAG 2.2, 2.1.4).
 */
export function isIdleLetter(event: KeyboardEvent): boolean {
  if (useAppStore.getState().letterKeysAnywhere || event.ctrlKey || event.metaKey || event.altKey) return false;
  const onSheet = event.target instanceof Element && event.target.closest('.plan-canvas') !== null;
  return event.key.length === 1 && !onSheet;
}
