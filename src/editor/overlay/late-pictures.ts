import { useShown } from '../../state/shown.ts';

/** Drawings whose code comes after the start, before anybody can ask for them. */
interface LatePictures {
  readonly drawnMarks: typeof import('../paint/spots.ts')['drawnMarks'];
  readonly drawnCrossWords: typeof import('./cross-words.ts')['drawnCrossWords'];
}

let late: LatePictures | null = null;

/** Takes over how the marks of the panels and the words beside the keyboard's cross are drawn. */
export function takeLatePictures(pictures: LatePictures): void {
  late = pictures;
  // What was asked for meanwhile shows now.
  useShown.setState((shown) => ({ ...shown }));
}

/** What the panels ask to be shown on the level in view; nothing until it is known how. */
export const drawnMarks: LatePictures['drawnMarks'] = (...asked) => late?.drawnMarks(...asked) ?? [];

/** What Enter does at the keyboard's cross; null until it is known how to draw it. */
export const drawnCrossWords: LatePictures['drawnCrossWords'] = (...asked) => late?.drawnCrossWords(...asked) ?? null;
