import type { Extent } from '../../../geometry/plane/extent.ts';
import type { Pen } from '../paint/pen.ts';

/** Values that a picture depends on. The same values, each compared by identity, give the same picture. */
export type Inputs = readonly unknown[];

/** Rectangles of the plan, mm, outside of which two states of a picture look the same. */
type Dirty = readonly Extent[] | 'everywhere';

/** One of the pictures that are painted over one another on a canvas of the sheet. It uses no React and has no state. */
export interface Picture<In extends Inputs = Inputs> {
  readonly name: string;
  /** Whether the other pictures of its canvas would mislead without it: if it cannot be drawn, none of them is. */
  readonly isEssential?: boolean;
  /** Returns its inputs from the stores. Called once in each frame in which something changed. Must not read the viewport. */
  readonly read: () => In;
  /** Draws it in screen pixels. Anything outside `pen.area` may be left out. */
  readonly paint: (pen: Pen, inputs: In) => void;
  /**
   * Returns where two states look different; without this method they differ everywhere. The caller adds the overhang of lines and letters.
   */
  readonly dirty?: (before: In, after: In, pen: Pen) => Dirty;
  /** Whether the place of some of it depends on the edges of the stage: it is then repainted when the sheet is at rest after a pan. */
  readonly anchored?: (inputs: In) => boolean;
}

/** Returns the picture with the types of its inputs erased, so that it can be in a list with others. */
export function picture<const In extends Inputs>(made: Picture<In>): Picture {
  // `paint` and `dirty` are only called with what `read` returned.
  return made as unknown as Picture;
}

export function sameInputs(a: Inputs, b: Inputs): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}
