import type { Body, Extent } from '../plane/body.ts';
import type { Mm } from '../plane/types.ts';
import type { Hole } from './hole.ts';

/** A body with the distance that the axis keeps from it, ready for cutting. */
export interface Grown extends Extent {
  readonly body: Body;
  readonly grow: Mm;
  /** What is free again within the body: the top of a table that carries. Null for none. */
  readonly hole: Hole | null;
  /** Flat pieces, see `outline.ts`. */
  readonly outline: Float64Array;
  readonly convex: boolean;
}

/** The space in question: `accepts` says whether a point belongs to it, everything accepted lies in the extent and hull. */
export interface Space {
  readonly extent: Extent;
  /** Half-planes (nx, ny, c): a point with nx·x + ny·y > c lies outside. May be empty. */
  readonly hull: Float64Array;
  readonly accepts: (x: Mm, y: Mm) => boolean;
}
