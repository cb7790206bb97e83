/** Most time in one slice, ms: half a frame. */
const BUDGET_MS = 8;

/** Runs the steps in slices between frames. Resolves to their result; null once `isWanted` returns false. */
export async function atLeisure<Value>(steps: Generator<void, Value>, isWanted: () => boolean): Promise<Value | null> {
  while (isWanted()) {
    const until = performance.now() + BUDGET_MS;
    while (performance.now() < until) {
      const { done, value } = steps.next();
      if (done) return value;
    }
    await new Promise((go) => setTimeout(go, 0));
  }
  return null;
}
