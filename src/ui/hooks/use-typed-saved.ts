import { useEffect, useRef } from 'react';

/** So long after the last key, ms, what stands in a field goes into the plan, though the field is not left yet. */
const REST_MS = 1500;

/**
 * Takes text over that is typed and not committed yet: at a rest, so that a reload or a crash loses no more than the last words.
 * @param text null while there is nothing to take over
 */
export function useTypedSaved(text: string | null, commit: () => void): void {
  const latest = useRef(commit);
  latest.current = commit;
  useEffect(() => {
    // After a space more words come, and a value may be trimmed.
    if (text === null || /\s$/.test(text)) return undefined;
    const timer = setTimeout(() => latest.current(), REST_MS);
    return () => clearTimeout(timer);
  }, [text]);
}

/** Leaves the field that is typed into when the page is hidden or left, before the plan is written: that commits its text. */
export function useTypedSavedOnLeave(): void {
  useEffect(() => {
    const leave = () => {
      if (document.activeElement instanceof HTMLInputElement || document.activeElement instanceof HTMLTextAreaElement)
        document.activeElement.blur();
    };
    const hide = () => {
      if (document.visibilityState === 'hidden') leave();
    };
    // In the capture phase, so that it comes before the plan is written.
    window.addEventListener('pagehide', leave, { capture: true });
    window.addEventListener('visibilitychange', hide, { capture: true });
    return () => {
      window.removeEventListener('pagehide', leave, { capture: true });
      window.removeEventListener('visibilitychange', hide, { capture: true });
    };
  }, []);
}
