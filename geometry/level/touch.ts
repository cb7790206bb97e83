import type { Mm, Wall, XY } from '../plan/model.ts';

/**
 * Two points this close are one, mm. A hundredth of a millimetre: far below any tape, far above the rounding of
 * coordinates in a plan of house size.
 */
export const TOUCH: Mm = 0.01;

/**
 * A wall end this near to another wall is joined to it, and the joint is reported. Half an inch: what a hand-drawn
 * corner misses by, and less than any gap that somebody means.
 */
export const SNAP: Mm = 12.7;

/** Where more walls than this meet, one ring stands for the joints of every two of them: no house has such a place. */
export const CROWD = 48;

/** The centre-line of a wall, or of a short piece that joins its end to another wall; from `a` to `b` in the order of the page. */
export interface CentreLine {
  readonly wall: Wall;
  readonly a: XY;
  readonly b: XY;
  /** Whether it is the wall as drawn, and not such a piece. */
  readonly isDrawn: boolean;
  /** Whether it lies in the line of its wall, as all do but pieces that lead straight across to a wall that runs beside. */
  readonly isInLine: boolean;
  /** The end of a wall that it leads to, where very many walls nearly meet. */
  readonly hub?: XY;
}
