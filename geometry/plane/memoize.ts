/**
 * A function of one object that keeps its answers for as long as the object lives. Plans are never changed in place, so the
 * same object always has the same answer; what an edit leaves alone keeps its identity and is not worked out again.
 */
export function remembered<Key extends object, Value>(build: (key: Key) => Value): (key: Key) => Value {
  const answers = new WeakMap<Key, Value>();
  return (key) => {
    const known = answers.get(key);
    // No answer is undefined, but for a function that answers nothing.
    if (known !== undefined) return known;
    const answer = build(key);
    answers.set(key, answer);
    return answer;
  };
}

/**
 * The same, but for the last `most` objects that it was asked about: for what is large and hangs on an object that something else
 * keeps, as the steps that can be taken back keep every plan of the day. An answer that was forgotten is worked out again.
 */
export function rememberedLately<Key extends object, Value>(
  build: (key: Key) => Value,
  most: number,
): (key: Key) => Value {
  const answers = new Map<Key, Value>();
  return (key) => {
    const known = answers.get(key);
    const answer = known !== undefined ? known : build(key);
    // The one asked for last is the last to be forgotten.
    answers.delete(key);
    answers.set(key, answer);
    for (const oldest of answers.keys()) {
      if (answers.size <= most) break;
      answers.delete(oldest);
    }
    return answer;
  };
}
