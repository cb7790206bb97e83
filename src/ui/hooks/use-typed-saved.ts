import { useEffect, useRef } from 'react';

/** Time after the last key when the text of a field is committed though the field still has the focus, ms. */
const REST_MS = 1500;

/**
 * Commits typed text after a pause, so that a reload or a crash loses no more than the last words.
 * @param text null while there is nothing to commit
 */
export function useTypedSaved(text: string | null, commit: () => void): void {
  const latest = useRef(commit);
  latest.current = commit;
  useEffect(() => {
    // After a space more words will follow, and a commit would trim the space.
    if (text === null || /\s$/.test(text)) return undefined;
    const timer = setTimeout(() => latest.current(), REST_MS);
    return () => clearTimeout(timer);
  }, [text]);
}

/** Removes the focus from the active field when the page is hidden or left, so that its text is committed before the plan is written. */
export function useTypedSavedOnLeave(): void {
  useEffect(() => {
    const leave = () => {
      if (document.activeElement instanceof HTMLInputElement || document.activeElement instanceof HTMLTextAreaElement)
        document.activeElement.blur();
    };
    const hide = () => {
      if (document.visibilityState === 'hidden') leave();
    };
    // In the capture phase, so that it runs before the plan is written.
    window.addEventListener('pagehide', leave, { capture: true });
    window.addEventListener('visibilitychange', hide, { capture: true });
    return () => {
      window.removeEventListener('pagehide', leave, { capture: true });
      window.removeEventListener('visibilitychange', hide, { capture: true });
    };
  }, []);
}
