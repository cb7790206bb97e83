import type { Deg, Mm, Shape, XY } from '../plan/model.ts';
import { shapeMiddle, shapeRing } from '../plane/body.ts';
import { ringExtent } from '../plane/extent.ts';
import type { Side } from './wall-gaps.ts';

/** The dimensions of a footprint. A circle has `across`, a box `width`, `depth` and `turn`. */
export interface FootprintSize {
  readonly across: Mm | null;
  readonly width: Mm | null;
  readonly depth: Mm | null;
  readonly turn: Deg | null;
}

/** Returns the dimensions of a shape; for a polygon its size along x and y, which cannot be edited. */
export function footprintSize(shape: Shape): FootprintSize {
  if ('circle' in shape) return { across: shape.circle.radius * 2, width: null, depth: null, turn: null };
  if ('box' in shape) return { across: null, width: shape.box.width, depth: shape.box.depth, turn: shape.box.turn };
  const { minX, minY, maxX, maxY } = ringExtent(shape.polygon.points);
  return { across: null, width: maxX - minX, depth: maxY - minY, turn: null };
}

/**
 * Returns the shape resized about its middle; dimensions that its form does not have are ignored. A polygon is
 * unchanged.
 */
export function withFootprintSize(shape: Shape, size: Partial<Record<keyof FootprintSize, number>>): Shape {
  if ('circle' in shape) {
    return size.across === undefined ? shape : { circle: { ...shape.circle, radius: size.across / 2 } };
  }
  if ('polygon' in shape) return shape;
  const { across: _across, ...rest } = size;
  return { box: { ...shape.box, ...rest } };
}

/** Returns the distances from the middle of a shape to its edge on each side of the page, mm. */
export function footprintReach(shape: Shape): Readonly<Record<Side, Mm>> {
  if ('circle' in shape) return circleReach(shape.circle.radius);
  const [x, y] = shapeMiddle(shape);
  const { minX, minY, maxX, maxY } = ringExtent(shapeRing(shape));
  return { left: x - minX, right: maxX - x, up: y - minY, down: maxY - y };
}

/** Returns the reach of a circle. */
export function circleReach(radius: Mm): Readonly<Record<Side, Mm>> {
  return { left: radius, right: radius, up: radius, down: radius };
}

/** Returns a circle as a square of the same size about the same middle, or the reverse. */
export function asForm(shape: Shape, form: 'round' | 'square'): Shape {
  const center: XY = shapeMiddle(shape);
  if (form === 'round' && 'box' in shape)
    return { circle: { center, radius: Math.min(shape.box.width, shape.box.depth) / 2 } };
  if (form === 'square' && 'circle' in shape) {
    const across = shape.circle.radius * 2;
    return { box: { center, width: across, depth: across, turn: 0 } };
  }
  return shape;
}
