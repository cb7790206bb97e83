import type { Level, Shape, XY } from './plan/model.ts';

/** An upright rectangle on the page, mm. */
export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The smallest rectangle that holds all points; null for none. */
export function boundsOf(points: readonly XY[]): Bounds | null {
  const [first] = points;
  if (!first) return null;
  let [left, top] = first;
  let [right, bottom] = first;
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

/** Corners of a footprint; a circle gives the corners of the square around it. */
export function shapeCorners(shape: Shape): readonly XY[] {
  if ('polygon' in shape) return shape.polygon.points;
  if ('circle' in shape) {
    const {
      center: [x, y],
      radius: r,
    } = shape.circle;
    return [
      [x - r, y - r],
      [x + r, y - r],
      [x + r, y + r],
      [x - r, y + r],
    ];
  }
  const {
    center: [x, y],
    width,
    depth,
    turn,
  } = shape.box;
  const cos = Math.cos((turn * Math.PI) / 180);
  const sin = Math.sin((turn * Math.PI) / 180);
  const corners: readonly XY[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  return corners.map(([i, j]) => {
    const across = (i * width) / 2;
    const along = (j * depth) / 2;
    return [x + across * cos - along * sin, y + across * sin + along * cos];
  });
}

/** The rectangle that holds all that is drawn on a level, walls with their thickness; null for an empty level. */
export function levelBounds(level: Level): Bounds | null {
  const points: XY[] = [];
  for (const { from, to, thickness } of level.walls) {
    const half = thickness / 2;
    for (const [x, y] of [from, to]) points.push([x - half, y - half], [x + half, y + half]);
  }
  for (const { shape } of [...level.fixtures, ...level.objects]) points.push(...shapeCorners(shape));
  for (const {
    at: [x, y],
    radius: r,
  } of level.detectors)
    points.push([x - r, y - r], [x + r, y + r]);
  for (const { at } of level.rooms) points.push(at);
  return boundsOf(points);
}
