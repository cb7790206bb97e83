/** Time in one go, ms: half a frame. */
const BUDGET_MS = 8;

/** Resolves to what the steps come to, worked through between frames; null when it was given up meanwhile. */
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
