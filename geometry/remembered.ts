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
