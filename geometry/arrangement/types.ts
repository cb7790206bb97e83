import type { Mm, XY } from '../plane/types.ts';

/** A straight piece of a boundary. */
interface LineEdge {
  readonly kind: 'line';
  readonly from: XY;
  readonly to: XY;
}
/**
 * A circular edge from angle `start`, spanning `sweep` (radians, positive = clockwise on screen, from +x toward +y).
 */
export interface ArcEdge {
  readonly kind: 'arc';
  readonly center: XY;
  readonly radius: Mm;
  readonly start: number;
  readonly sweep: number;
}
export type Edge = LineEdge | ArcEdge;
/** A closed boundary; each edge starts where the previous one ends. */
export type ArcRing = readonly Edge[];
