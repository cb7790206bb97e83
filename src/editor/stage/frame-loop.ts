/**
 * Work that waits for the next animation frame; each piece is done once in it, however often it was asked for. Input first, then the
 * painting of what came of it, so that nothing is painted twice in a frame.
 */
const phases = { input: new Set<() => void>(), paint: new Set<() => void>() } as const;
export type FramePhase = keyof typeof phases;

let requested = 0;

/** Does the work before the browser shows its next frame; what painting asks for, before the one after. */
export function inNextFrame(phase: FramePhase, work: () => void): void {
  phases[phase].add(work);
  if (requested === 0) requested = requestAnimationFrame(runAll);
}

/** Cancels work that waits. */
export function cancelInNextFrame(work: () => void): void {
  for (const phase of Object.values(phases)) phase.delete(work);
}

/** Does waiting input now, before something that depends on it. */
export function flushInput(work: () => void): void {
  if (phases.input.delete(work)) work();
}

/** Returns whether work waits, so that the sheet is not up to date yet. */
export function isFramePending(): boolean {
  return requested !== 0;
}

function runAll(): void {
  for (const phase of Object.values(phases)) {
    const due = [...phase];
    phase.clear();
    for (const work of due) isolated(work);
  }
  const more = Object.values(phases).some(({ size }) => size > 0);
  requested = more ? requestAnimationFrame(runAll) : 0;
}

/** One piece of work that throws must not keep the others, or the next frame, from being done. */
function isolated(work: () => void): void {
  try {
    work();
  } catch (error) {
    reportError(error);
  }
}
