import type { Mm, Wall, XY } from '../plan/model.ts';

/**
 * Node tolerance, mm: points this close are the same node. Far below any tape and far above the rounding of
 * coordinates in a plan of house size.
 */
export const TOUCH: Mm = 0.01;

/**
 * A wall end this close to another wall is connected to it, and the gap is reported, mm. Half an inch: a typical error
 * of a
 * drawn corner, and less than any intended gap.
 */
export const SNAP: Mm = 12.7;

/** Nodes of a higher degree get one ring instead of pairwise joints. No house has such a node. */
export const CROWD = 48;

/**
 * The center-line of a wall, or of a short piece that connects its end to another wall; `a` before `b` by x, then y.
 */
export interface CentreLine {
  readonly wall: Wall;
  readonly a: XY;
  readonly b: XY;
  /** Whether it is a wall as drawn, not a connecting piece. */
  readonly isDrawn: boolean;
  /**
   * Whether it is collinear with its wall: false only for pieces that lead straight across to a wall running alongside.
   */
  readonly isInLine: boolean;
  /**
   * The hub that it leads to. Where very many walls nearly meet, the end of one of them becomes a hub: all the others
   * are connected
   * to it, like spokes, instead of to each other.
   */
  readonly hub?: XY;
}
