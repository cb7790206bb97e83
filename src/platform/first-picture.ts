/*
 * The first picture of the sheet. What it does not need is loaded after it: on a slow line, other files would delay it.
 */

/** How long the rest of the app waits for a sheet that is not drawn, ms. */
const LONGEST_WAIT_MS = 3000;

let drawn: (() => void) | null = null;
let first: Promise<void> = Promise.resolve();

/** Starts the wait for the first picture, which ends with it, with a press or a key, or after `LONGEST_WAIT_MS`. */
export function awaitFirstPicture(): void {
  const events = ['pointerdown', 'keydown'] as const;
  first = new Promise((done) => {
    drawn = done;
    for (const event of events) addEventListener(event, () => done(), { capture: true, once: true });
    setTimeout(done, LONGEST_WAIT_MS);
  });
}

/** Tells that the sheet has been drawn, in the frame that shows it. */
export function firstPictureDrawn(): void {
  const done = drawn;
  drawn = null;
  // In the next frame the browser has shown it.
  if (done) requestAnimationFrame(done);
}

/** Resolves when the first picture is shown; at once where none is awaited. */
export const firstPicture = (): Promise<void> => first;

let rest: Promise<unknown> = Promise.resolve();

/** Calls `load` after the first picture. */
export function loadAfterFirstPicture(load: () => Promise<unknown>): void {
  rest = first.then(load);
}

/** Resolves when that is loaded. */
export async function restOfStart(): Promise<void> {
  await rest;
}
