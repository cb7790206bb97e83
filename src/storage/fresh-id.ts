/** Returns an id that no other plan, tab or device has: 80 random bits. `crypto.randomUUID` is missing on pages without https. */
export function freshId(): string {
  return [...crypto.getRandomValues(new Uint16Array(5))].map((part) => part.toString(36).padStart(4, '0')).join('');
}
