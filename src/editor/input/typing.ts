/** Returns whether a key press on this target belongs to a field. */
export function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, select, textarea, [contenteditable]') !== null;
}
