import { useShown } from '../../state/shown.ts';

/** Drawings whose code comes after the start, before anybody can ask for them. */
interface LatePictures {
  readonly drawnMarks: typeof import('../paint/spots.ts')['drawnMarks'];
  readonly paintNote: typeof import('./note-picture.ts')['paintNote'];
}

let late: LatePictures | null = null;

/** Takes over how the marks of the panels and the note at the pointer are drawn. */
export function takeLatePictures(pictures: LatePictures): void {
  late = pictures;
  // What was asked for meanwhile shows now.
  useShown.setState((shown) => ({ ...shown }));
}

/** What the panels ask to be shown on the level in view; nothing until it is known how. */
export const drawnMarks: LatePictures['drawnMarks'] = (...asked) => late?.drawnMarks(...asked) ?? [];

/** The note at the pointer and the words at the keyboard's cross; nothing until it is known how. */
export const paintNote: LatePictures['paintNote'] = (...asked) => late?.paintNote(...asked);
