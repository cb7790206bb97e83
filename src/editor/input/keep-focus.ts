/** Within this time after a tap, ms, the browser sends an emulated mouse press, which would move the focus to the sheet. */
const TAP_MS = 500;

/** Keeps the focus where a tap has just put it. Returns the function that ends that. */
export function keepFocusOfTap(): () => void {
  const openedAt = performance.now();
  const onPress = (event: MouseEvent) => {
    if (performance.now() - openedAt < TAP_MS) event.preventDefault();
  };
  window.addEventListener('mousedown', onPress, { capture: true });
  return () => window.removeEventListener('mousedown', onPress, { capture: true });
}
