/** The same list when nothing in it changed: whatever is derived from it stays valid. */
export function sameIfUnchanged<T>(before: readonly T[], after: readonly T[]): readonly T[] {
  return after.every((item, index) => item === before[index]) ? before : after;
}
