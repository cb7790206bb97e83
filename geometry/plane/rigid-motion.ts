import { direction, fullTurn } from './bearing.ts';
import { shapeMiddle, shapeRing } from './body.ts';
import { distance, roundPoint } from './point.ts';
import type { Deg, Mm, Shape, XY } from './types.ts';

/** A rigid motion: rotate about the point `from` by `turn`, then translate `from` to `to`. */
export interface RigidMotion {
  readonly from: XY;
  readonly to: XY;
  /** Clockwise on screen. */
  readonly turn: Deg;
}

/** Tolerance for comparing corners, mm: stored coordinates are rounded to 1e-4. */
const CORNER_TOLERANCE: Mm = 0.01;

/**
 * Returns the motion that maps one shape onto the other; null when size or form differ. The motion of a circle has no
 * rotation.
 */
export function rigidMotion(before: Shape, after: Shape): RigidMotion | null {
  if ('circle' in before && 'circle' in after) {
    if (before.circle.radius !== after.circle.radius) return null;
    return { from: before.circle.center, to: after.circle.center, turn: 0 };
  }
  if ('box' in before && 'box' in after) {
    const { width, depth, turn } = before.box;
    if (width !== after.box.width || depth !== after.box.depth) return null;
    return { from: shapeMiddle(before), to: shapeMiddle(after), turn: after.box.turn - turn };
  }
  return 'polygon' in before && 'polygon' in after ? ringMotion(shapeRing(before), shapeRing(after)) : null;
}

function ringMotion(before: readonly XY[], after: readonly XY[]): RigidMotion | null {
  const [from, to] = [before[0], after[0]];
  if (!from || !to || before.length !== after.length) return null;
  // The corner farthest from the first gives the most accurate angle.
  const far = before.reduce(
    (best, point, i) => (distance(from, point) > distance(from, before[best] as XY) ? i : best),
    0,
  );
  const turn = fullTurn(direction(to, after[far] as XY) - direction(from, before[far] as XY));
  const motion = { from, to, turn: Math.min(turn, 360 - turn) < 1e-6 ? 0 : turn };
  const same = before.every((point, i) => distance(transformPoint(point, motion), after[i] as XY) <= CORNER_TOLERANCE);
  return same ? motion : null;
}

/** Returns the image of a point under the motion. */
export function transformPoint([x, y]: XY, { from, to, turn }: RigidMotion): XY {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [dx, dy] = [x - from[0], y - from[1]];
  return turn === 0
    ? roundPoint([to[0] + dx, to[1] + dy])
    : roundPoint([to[0] + dx * cos - dy * sin, to[1] + dx * sin + dy * cos]);
}

/** Returns the image of a shape under the motion. */
export function transformShape(shape: Shape, motion: RigidMotion): Shape {
  if ('circle' in shape) return { circle: { ...shape.circle, center: transformPoint(shape.circle.center, motion) } };
  if ('box' in shape) {
    const { box } = shape;
    return { box: { ...box, center: transformPoint(box.center, motion), turn: addAngles(box.turn, motion.turn) } };
  }
  return { polygon: { ...shape.polygon, points: shape.polygon.points.map((point) => transformPoint(point, motion)) } };
}

/** Returns the shape translated by a vector, mm. */
export function translateShape(shape: Shape, by: XY): Shape {
  return transformShape(shape, { from: [0, 0], to: by, turn: 0 });
}

/** Returns the sum of two angles, normalized to 0…360 (360 excluded); exactly `turn` when `by` is 0. */
export function addAngles(turn: Deg, by: Deg): Deg {
  return by === 0 ? turn : fullTurn(turn + by);
}
