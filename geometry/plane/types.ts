/**
 * Words of the plane. Lengths are millimetres; angles degrees clockwise on screen, 0 along +x; x runs right and y runs down the page.
 */

/** A length in millimetres. */
export type Mm = number;
/** An angle in degrees, clockwise on screen, 0 along +x. */
export type Deg = number;
/** A point on the page: x to the right, y down, in mm. */
export type XY = readonly [x: Mm, y: Mm];

interface Circle {
  readonly center: XY;
  readonly radius: Mm;
}
export interface Box {
  readonly center: XY;
  /** Extent along the box's own x axis, before `turn`. */
  readonly width: Mm;
  /** Extent along the box's own y axis, before `turn`. */
  readonly depth: Mm;
  readonly turn: Deg;
}
interface Polygon {
  /** At least three corners of a simple ring; the first is not repeated. */
  readonly points: readonly XY[];
}
export type Shape = { readonly circle: Circle } | { readonly box: Box } | { readonly polygon: Polygon };

/** The air that a fixture throws: a sector from the middle of its shape. */
export interface Stream {
  readonly direction: Deg;
  /** The whole angle of the sector, half of it on either side of `direction`. */
  readonly spread: Deg;
  /** From the middle of the shape. */
  readonly reach: Mm;
}

/** Open ring: the first corner is not repeated. Outer rings have positive shoelace area (clockwise on screen), holes negative. */
export type Ring = readonly XY[];

/** A line between two points. */
export type Line = readonly [from: XY, to: XY];
