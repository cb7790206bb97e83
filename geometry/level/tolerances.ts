import type { Mm } from '../plan/model.ts';

/**
 * Node tolerance, mm: points this close are the same node. Far below any tape and far above the rounding of
 * coordinates in a plan of house size.
 */
export const NODE_TOLERANCE: Mm = 0.01;

/**
 * A wall end this close to another wall is connected to it, and the gap is reported, mm. Half an inch: a typical
 * error of a drawn corner, and less than any intended gap.
 */
export const SNAP_DISTANCE: Mm = 12.7;

/** Nodes of a higher degree get one ring instead of pairwise joints. No house has such a node. */
export const HIGH_DEGREE = 48;

/** Up to this many coinciding walls keep their own bodies; beyond, one body contains the rest. */
export const MOST_COINCIDING = 8;

/** A node closer than this to its position on a wall lies on the wall, mm. */
export const ON_WALL: Mm = 1e-6;

/** Sine of the angle between two walls above which they cross instead of coinciding. */
export const CROSSING_SINE = 0.1;
