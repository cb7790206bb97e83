import { shapeMiddle, shapeRing } from './body.ts';
import { distance, tidyPoint } from './point.ts';
import type { Deg, Mm, Shape, XY } from './types.ts';

/** A move of a shape that keeps its size: turned about the point `from` by `turn`, then `from` laid on `to`. */
export interface RigidMotion {
  readonly from: XY;
  readonly to: XY;
  /** Clockwise on screen. */
  readonly turn: Deg;
}

/** Corners off by less than this are where the move puts them, mm: coordinates are kept to a ten-thousandth. */
const EXACT: Mm = 0.01;

/** The move that makes one shape of the other; null where its size or form changed. A circle has no turn. */
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
  // The corner farthest from the first says the turn best.
  const far = before.reduce(
    (best, point, i) => (distance(from, point) > distance(from, before[best] as XY) ? i : best),
    0,
  );
  const turn = degrees(to, after[far] as XY) - degrees(from, before[far] as XY);
  const motion = { from, to, turn: Math.abs(turn) < 1e-6 ? 0 : turn };
  const same = before.every((point, i) => distance(pointMoved(point, motion), after[i] as XY) <= EXACT);
  return same ? motion : null;
}

function degrees(a: XY, b: XY): Deg {
  return (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
}

/** Where the move takes a point. */
export function pointMoved([x, y]: XY, { from, to, turn }: RigidMotion): XY {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [dx, dy] = [x - from[0], y - from[1]];
  return turn === 0
    ? tidyPoint([to[0] + dx, to[1] + dy])
    : tidyPoint([to[0] + dx * cos - dy * sin, to[1] + dx * sin + dy * cos]);
}

/** What the move makes of a shape. */
export function shapeCarried(shape: Shape, motion: RigidMotion): Shape {
  if ('circle' in shape) return { circle: { ...shape.circle, center: pointMoved(shape.circle.center, motion) } };
  if ('box' in shape) {
    const { box } = shape;
    return { box: { ...box, center: pointMoved(box.center, motion), turn: turnedBy(box.turn, motion.turn) } };
  }
  return { polygon: { ...shape.polygon, points: shape.polygon.points.map((point) => pointMoved(point, motion)) } };
}

/** A shape moved without turning. */
export function shapeMoved(shape: Shape, by: XY): Shape {
  return shapeCarried(shape, { from: [0, 0], to: by, turn: 0 });
}

/** From 0 to below 360; the same number where nothing turns. */
export function turnedBy(turn: Deg, by: Deg): Deg {
  return by === 0 ? turn : (((turn + by) % 360) + 360) % 360;
}
