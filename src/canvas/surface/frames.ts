/** Work that waits for the next frame; each piece is done once in it, however often it was asked for. */
const waiting = new Set<() => void>();
let asked = 0;

/** Does the work before the browser shows its next picture. */
export function inNextFrame(work: () => void): void {
  waiting.add(work);
  if (asked === 0) asked = requestAnimationFrame(runAll);
}

/** Takes back what was asked for. */
export function notInNextFrame(work: () => void): void {
  waiting.delete(work);
}

function runAll(): void {
  asked = 0;
  const due = [...waiting];
  waiting.clear();
  for (const work of due) work();
}
