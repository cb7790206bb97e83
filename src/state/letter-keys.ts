import { create } from 'zustand';

/**
 * Whether a letter, a digit or a sign alone is a key wherever the keyboard is; else only while the sheet has it. Who works by voice
 * turns it off, so that dictated letters do nothing (WCAG 2.2, 2.1.4).
 */
export const useLetterKeys = create<{ readonly anywhere: boolean }>()(() => ({ anywhere: true }));

/** Whether a press is such a key where it is not to count. */
export function isIdleLetter(event: KeyboardEvent): boolean {
  if (useLetterKeys.getState().anywhere || event.ctrlKey || event.metaKey || event.altKey) return false;
  const onSheet = event.target instanceof Element && event.target.closest('.plan-canvas') !== null;
  return event.key.length === 1 && !onSheet;
}
