/**
 * A function of one object whose results are kept for as long as the object lives. Plans are never changed in place, so the
 * same object always has the same result; what an edit leaves alone keeps its identity and is not worked out again.
 */
export function memoize<Key extends object, Value>(build: (key: Key) => Value): (key: Key) => Value {
  const results = new WeakMap<Key, Value>();
  return (key) => {
    const known = results.get(key);
    // No result is undefined, but for a function that returns nothing.
    if (known !== undefined) return known;
    const result = build(key);
    results.set(key, result);
    return result;
  };
}

/**
 * The same, but for the last `most` objects that it was asked about: for what is large and hangs on an object that something else
 * keeps, as the steps that can be taken back keep every plan of the day. A result that was dropped is worked out again.
 */
export function memoizeRecent<Key extends object, Value>(
  build: (key: Key) => Value,
  most: number,
): (key: Key) => Value {
  const results = new Map<Key, Value>();
  return (key) => {
    const known = results.get(key);
    const result = known !== undefined ? known : build(key);
    // The one asked for last is dropped last.
    results.delete(key);
    results.set(key, result);
    for (const oldest of results.keys()) {
      if (results.size <= most) break;
      results.delete(oldest);
    }
    return result;
  };
}
