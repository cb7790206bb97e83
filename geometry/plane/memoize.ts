/**
 * Returns a memoized version of a function of one object. Results live as long as the object (WeakMap). Plans are
 * immutable and edits
 * share the unchanged parts, so the identity of an object is a valid key.
 */
export function memoize<Key extends object, Value>(build: (key: Key) => Value): (key: Key) => Value {
  const results = new WeakMap<Key, Value>();
  return (key) => {
    const cached = results.get(key);
    // `undefined` counts as "not cached": a function that returns it is computed each time.
    if (cached !== undefined) return cached;
    const result = build(key);
    results.set(key, result);
    return result;
  };
}

/**
 * Same as `memoize`, but keeps only the `most` recently used results (LRU): for large results keyed by objects that
 * live long,
 * such as plans in the undo history.
 */
export function memoizeRecent<Key extends object, Value>(
  build: (key: Key) => Value,
  most: number,
): (key: Key) => Value {
  const results = new Map<Key, Value>();
  return (key) => {
    const cached = results.get(key);
    const result = cached !== undefined ? cached : build(key);
    // Deleting and inserting again moves the key to the end of the Map's order.
    results.delete(key);
    results.set(key, result);
    for (const oldest of results.keys()) {
      if (results.size <= most) break;
      results.delete(oldest);
    }
    return result;
  };
}

/** Returns `before` when every element is identical, so that results memoized by the list's identity stay valid. */
export function sameIfUnchanged<T>(before: readonly T[], after: readonly T[]): readonly T[] {
  return after.every((item, index) => item === before[index]) ? before : after;
}
