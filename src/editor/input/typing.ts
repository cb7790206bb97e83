/** Whether a key that is pressed there belongs to a field. */
export function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, select, textarea, [contenteditable]') !== null;
}
