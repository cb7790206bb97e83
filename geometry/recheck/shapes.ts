import type { Deg, Mm, Shape, Stream, XY } from '../plan/model.ts';
import { type Ring, ringContains } from './planar-turf.ts';
import { apart, extentOf, outlineDistance, plus, ringDistance, segmentDistance } from './plane.ts';

const radians = (turn: Deg) => (turn * Math.PI) / 180;
const pointing = (turn: Deg): XY => [Math.cos(radians(turn)), Math.sin(radians(turn))];

/** Returns the corners of a box or a polygon; null for a circle. */
function cornersOf(shape: Shape): Ring | null {
  if ('circle' in shape) return null;
  if ('polygon' in shape) return shape.polygon.points;
  const { center, width, depth, turn } = shape.box;
  const [across, down] = [pointing(turn), pointing(turn + 90)];
  const corner = (sx: number, sy: number) => plus(plus(center, across, (sx * width) / 2), down, (sy * depth) / 2);
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** Returns the distance from p to a shape, mm: 0 inside. */
export function shapeDistance(shape: Shape, p: XY): Mm {
  const corners = cornersOf(shape);
  if (corners) return ringDistance(p, corners);
  return 'circle' in shape
    ? Math.max(0, apart(p, shape.circle.center) - shape.circle.radius)
    : Number.POSITIVE_INFINITY;
}

/** Returns whether the disc around p is wholly in the shape, to 0.1 mm. */
export function shapeContainsDisc(shape: Shape, p: XY, radius: Mm): boolean {
  const corners = cornersOf(shape);
  if (corners) return ringContains(corners, p) && outlineDistance(p, corners) >= radius - 0.1;
  return 'circle' in shape && apart(p, shape.circle.center) + radius <= shape.circle.radius + 0.1;
}

function shapeMiddle(shape: Shape): XY {
  if ('circle' in shape) return shape.circle.center;
  if ('box' in shape) return shape.box.center;
  const [x0, y0, x1, y1] = extentOf(shape.polygon.points);
  return [(x0 + x1) / 2, (y0 + y1) / 2];
}

/** Returns the signed distance from p to the air stream of a shape, mm; negative inside. */
export function streamDistance(shape: Shape, { direction, spread, reach }: Stream, p: XY): Mm {
  const apex = shapeMiddle(shape);
  const off = (Math.atan2(p[1] - apex[1], p[0] - apex[0]) * 180) / Math.PI - direction;
  const turned = Math.abs(off - 360 * Math.round(off / 360));
  const within = turned <= spread / 2;
  const tips = [direction - spread / 2, direction + spread / 2].map((turn) => plus(apex, pointing(turn), reach));
  const edges = spread >= 360 ? [] : tips.map((tip) => segmentDistance(p, apex, tip));
  const arc = within ? [Math.abs(apart(p, apex) - reach)] : tips.map((tip) => apart(p, tip));
  const distance = Math.min(...edges, ...arc);
  return within && apart(p, apex) <= reach ? -distance : distance;
}
