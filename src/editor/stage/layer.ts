import type { Extent } from '../../../geometry/plane/body.ts';
import type { Pen } from '../paint/pen.ts';

/** Values that a picture hangs on. The same values, each compared by identity, give the same picture. */
export type Inputs = readonly unknown[];

/** Where two pictures of a layer differ, plan mm: nowhere for an empty list, and everywhere. */
type Spoilt = readonly Extent[] | 'everywhere';

/** One picture among those that lie on one another on a surface. No React, no state of its own. */
export interface Layer<In extends Inputs = Inputs> {
  readonly name: string;
  /** What it hangs on, from the stores. Asked once a frame in which something has changed; never of the viewport. */
  readonly read: () => In;
  /** Draws it in screen pixels. What lies outside `pen.area` may be left out: nobody sees it. */
  readonly paint: (pen: Pen, inputs: In) => void;
  /** Where the pictures differ, drawn by this pen; everywhere when left out. Lines and letters reach a few px further: the surface sees to that. */
  readonly differs?: (before: In, after: In, pen: Pen) => Spoilt;
  /** Whether something of it has its place from the stage's edges: it is then painted anew when a moved sheet has come to rest. */
  readonly anchored?: (inputs: In) => boolean;
}

/** A layer with its inputs' types settled, to lie in a list with others. */
export function layer<const In extends Inputs>(made: Layer<In>): Layer {
  // What `paint` and `differs` are given is always what `read` answered.
  return made as unknown as Layer;
}

export function sameInputs(a: Inputs, b: Inputs): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}
