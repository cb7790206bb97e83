/**
 * Work that waits for the next animation frame. Each function is called once in it, however often it was requested. Input is handled first,
 * then its results are painted, so that nothing is painted twice in a frame.
 */
const phases = { input: new Set<() => void>(), paint: new Set<() => void>() } as const;
export type FramePhase = keyof typeof phases;

let requested = 0;

/** Runs the work before the browser shows its next frame; work that is requested by painting runs before the frame after that. */
export function inNextFrame(phase: FramePhase, work: () => void): void {
  phases[phase].add(work);
  if (requested === 0) requested = requestAnimationFrame(runAll);
}

/** Cancels waiting work. */
export function cancelInNextFrame(work: () => void): void {
  for (const phase of Object.values(phases)) phase.delete(work);
}

/** Runs waiting input now, before something that depends on it. */
export function flushInput(work: () => void): void {
  if (phases.input.delete(work)) work();
}

/** Returns whether work is waiting, so that the sheet is not up to date yet. */
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

/** A function that throws must not keep the others, or the next frame, from running. */
function isolated(work: () => void): void {
  try {
    work();
  } catch (error) {
    reportError(error);
  }
}
