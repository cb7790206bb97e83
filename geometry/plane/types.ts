/**
 * Types of plane geometry. Lengths are millimeters; angles degrees clockwise on screen, 0 along +x; x runs right and y
 * runs down.
 */

/** A length in millimeters. */
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
  /** Size along the box's own x axis, before `turn`. */
  readonly width: Mm;
  /** Size along the box's own y axis, before `turn`. */
  readonly depth: Mm;
  readonly turn: Deg;
}
interface Polygon {
  /** At least three corners of a simple ring; the first corner is not repeated at the end. */
  readonly points: readonly XY[];
}
export type Shape = { readonly circle: Circle } | { readonly box: Box } | { readonly polygon: Polygon };

/** The air stream of a fixture: a sector around the middle of its shape. */
export interface Stream {
  readonly direction: Deg;
  /** Full angle of the sector, half of it on either side of `direction`. */
  readonly spread: Deg;
  /** Radius of the sector. */
  readonly reach: Mm;
}

/**
 * An open ring: the first corner is not repeated. Outer rings have positive shoelace area (clockwise on screen), holes
 * negative.
 */
export type Ring = readonly XY[];

/** A line segment. */
export type Line = readonly [from: XY, to: XY];
