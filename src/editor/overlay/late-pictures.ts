import { useShown } from '../../state/shown.ts';

/** Drawing functions whose code loads after the start. */
interface LatePictures {
  readonly drawnMarks: typeof import('../paint/spots.ts')['drawnMarks'];
  readonly paintNote: typeof import('./note-picture.ts')['paintNote'];
}

let late: LatePictures | null = null;

/** Sets the functions that draw the marks of the panels and the note at the pointer, once they are loaded. */
export function takeLatePictures(pictures: LatePictures): void {
  late = pictures;
  // Draws what was asked for before.
  useShown.setState((shown) => ({ ...shown }));
}

/** Returns what the panels ask to be shown on the level in view; empty until its code is loaded. */
export const drawnMarks: LatePictures['drawnMarks'] = (...asked) => late?.drawnMarks(...asked) ?? [];

/** Paints the note at the pointer and the words at the keyboard's cross; nothing until the code is loaded. */
export const paintNote: LatePictures['paintNote'] = (...asked) => late?.paintNote(...asked);
