/**
 * Work that waits for the next frame; each piece is done once in it, however often it was asked for. First what a hand has done,
 * then the painting of what came of it: so nothing is painted twice in a frame.
 */
const stages = { hand: new Set<() => void>(), paint: new Set<() => void>() } as const;
export type FrameStage = keyof typeof stages;

let asked = 0;

/** Does the work before the browser shows its next picture; what painting asks for, before the one after. */
export function inNextFrame(stage: FrameStage, work: () => void): void {
  stages[stage].add(work);
  if (asked === 0) asked = requestAnimationFrame(runAll);
}

/** Takes back what was asked for. */
export function notInNextFrame(work: () => void): void {
  for (const stage of Object.values(stages)) stage.delete(work);
}

/** Does it now, if it was asked for: before what must find it done. */
export function nowIfWaiting(work: () => void): void {
  if (stages.hand.delete(work)) work();
}

/** Whether something is still to be done before what is shown is up to date. */
export function isFrameDue(): boolean {
  return asked !== 0;
}

function runAll(): void {
  for (const stage of Object.values(stages)) {
    const due = [...stage];
    stage.clear();
    for (const work of due) work();
  }
  const more = Object.values(stages).some(({ size }) => size > 0);
  asked = more ? requestAnimationFrame(runAll) : 0;
}
