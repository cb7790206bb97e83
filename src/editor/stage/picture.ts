import type { Extent } from '../../../geometry/plane/extent.ts';
import type { Pen } from '../paint/pen.ts';

/** Values that a picture is made from. The same values, each compared by identity, give the same picture. */
export type Inputs = readonly unknown[];

/** Rectangles of the plan, mm, outside of which two states of a picture look the same. */
type Dirty = readonly Extent[] | 'everywhere';

/** One of the pictures that lie over one another on a canvas of the sheet. No React, no state of its own. */
export interface Picture<In extends Inputs = Inputs> {
  readonly name: string;
  /** Whether the pictures of its canvas would mislead without it: where it cannot be drawn, none of them is. */
  readonly isEssential?: boolean;
  /** Returns what it is made from, out of the stores. Called once a frame in which something changed. Never reads the viewport. */
  readonly read: () => In;
  /** Draws it in screen pixels. What lies outside `pen.area` may be left out. */
  readonly paint: (pen: Pen, inputs: In) => void;
  /** Returns where two states look different; everywhere when left out. The overhang of lines and letters is added by the caller. */
  readonly dirty?: (before: In, after: In, pen: Pen) => Dirty;
  /** Whether some of it is placed by the edges of the stage: it is then repainted when the sheet has come to rest after a pan. */
  readonly anchored?: (inputs: In) => boolean;
}

/** Returns the picture with the types of its inputs erased, to stand in a list with others. */
export function picture<const In extends Inputs>(made: Picture<In>): Picture {
  // `paint` and `dirty` are only called with what `read` returned.
  return made as unknown as Picture;
}

export function sameInputs(a: Inputs, b: Inputs): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}
