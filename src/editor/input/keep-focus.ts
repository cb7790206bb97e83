/** A tap is followed, within this, ms, by the press of a mouse that there is not, which would take the focus to the sheet. */
const TAP_MS = 500;

/** Keeps the focus where a tap has just put it. Returns what ends that. */
export function keepFocusOfTap(): () => void {
  const openedAt = performance.now();
  const onPress = (event: MouseEvent) => {
    if (performance.now() - openedAt < TAP_MS) event.preventDefault();
  };
  window.addEventListener('mousedown', onPress, { capture: true });
  return () => window.removeEventListener('mousedown', onPress, { capture: true });
}
