import { nextFigure } from './figures.ts';
import { closeLength, openLength, useLengths } from './store.ts';

/**
 * Keys of the lengths on the sheet: a first digit begins the one that waits, Enter goes into its field, L and Shift + L open one
 * length after the other. Answers whether the key was one of them; Escape gives the waiting one up and means the rest as well.
 */
export function lengthKey(event: KeyboardEvent, onSheet: boolean): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const { open } = useLengths.getState();
  if (event.key.toLowerCase() === 'l') {
    const subject = nextFigure(event.shiftKey ? -1 : 1);
    if (subject) openLength(subject, true);
    return subject !== null;
  }
  if (!open || open.typing) return false;
  const begins = /^[0-9.]$/.test(event.key) || (event.key === 'Enter' && onSheet);
  if (!begins) {
    // Whoever does something else does not mean to type it.
    if (event.key !== 'Shift') closeLength();
    return false;
  }
  const first = event.key === 'Enter' ? null : event.key;
  useLengths.setState({ open: { ...open, typing: true, first } });
  return true;
}
