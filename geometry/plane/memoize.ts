/**
 * Returns a memoized version of a function of one object. Results live as long as the object (WeakMap). Plans are
 * immutable and edits share the unchanged parts, so the identity of an object is a valid key.
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
 * Same as `memoize`, but keeps only the `most` recently used results (LRU): for large results keyed by objects with a
 * long life, such as plans in the undo history.
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
  return after.length === before.length && after.every((item, index) => item === before[index]) ? before : after;
}

/** A function that keeps its last result. */
export interface MemoizedLatest<Args extends readonly unknown[], Value> {
  (...args: Args): Value;
  /** Returns the result for these arguments if it is cached, else null. */
  peek(...args: Args): Value | null;
}

/**
 * Returns a function of several arguments that keeps its last result for as long as its inputs are the same objects.
 * @param inputs the objects that the result depends on; by default the arguments
 * @param share returns the new result with those parts of the previous one that are equal in value (structural sharing)
 */
export function memoizeLatest<Args extends readonly unknown[], Value>(
  build: (...args: Args) => Value,
  inputs: (...args: Args) => readonly unknown[] = (...args) => args,
  share: (before: Value, now: Value) => Value = (_, now) => now,
): MemoizedLatest<Args, Value> {
  let latest: { readonly inputs: readonly unknown[]; readonly value: Value } | null = null;
  const hasInputs = (now: readonly unknown[]) =>
    latest?.inputs.length === now.length && latest.inputs.every((input, index) => input === now[index]);
  const call = (...args: Args): Value => {
    const now = inputs(...args);
    if (latest && hasInputs(now)) return latest.value;
    const value = build(...args);
    latest = { inputs: now, value: latest ? share(latest.value, value) : value };
    return latest.value;
  };
  return Object.assign(call, { peek: (...args: Args) => (latest && hasInputs(inputs(...args)) ? latest.value : null) });
}
