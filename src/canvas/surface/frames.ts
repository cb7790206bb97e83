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

/** Does it now, if it was asked for: before what must find it done. */
export function nowIfWaiting(work: () => void): void {
  if (waiting.delete(work)) work();
}

function runAll(): void {
  // What the work of this frame asks for is done in it too: a hand moves a wall, then the wall is painted. A second round only:
  // what asks for itself over and over gets its frames one by one.
  for (let round = 0; round < 2; round++) {
    const due = [...waiting];
    waiting.clear();
    for (const work of due) work();
  }
  asked = waiting.size > 0 ? requestAnimationFrame(runAll) : 0;
}
