import { discExtent, type Extent, flatExtent, ringExtent } from './extent.ts';
import { memoize } from './memoize.ts';
import { distance, vectorLength } from './point.ts';
import { clockwiseOnScreen, nearestOnRing, ringContains } from './ring.ts';
import type { Box, Mm, Ring, Shape, Stream, XY } from './types.ts';

/**
 * A shape that distances are measured to. Rings are flat arrays (x0, y0, x1, y1, …), clockwise on screen, first corner
 * not repeated.
 */
export type Body =
  | { readonly kind: 'disc'; readonly x: Mm; readonly y: Mm; readonly radius: Mm; readonly extent: Extent }
  | { readonly kind: 'ring'; readonly flat: Float64Array; readonly ring: Ring; readonly extent: Extent }
  | {
      readonly kind: 'sector';
      readonly x: Mm;
      readonly y: Mm;
      /** Radians, clockwise on screen from +x. */
      readonly direction: number;
      /** Half of the sector's angle, radians, 0…π. */
      readonly half: number;
      readonly reach: Mm;
      readonly extent: Extent;
    };

const RADIANS = Math.PI / 180;

/** Corners closer than this are the same corner, mm: the difference comes from rounding, not from the drawing. */
const CORNER_TOLERANCE: Mm = 1e-9;

/**
 * Returns the body of a ring. A ring without area is measured as its edges; one of a single corner becomes a disc of
 * radius 0.
 */
export function ringBody(ring: Ring): Body {
  const asDrawn = flatRing(ring);
  if (isTidy(asDrawn)) return new RingBody(asDrawn, ring);
  const clockwise = clockwiseOnScreen(withoutDuplicates(ring));
  const [first] = clockwise;
  if (first && clockwise.length === 1)
    return { kind: 'disc', x: first[0], y: first[1], radius: 0, extent: ringExtent([first]) };
  return new RingBody(flatRing(clockwise), clockwise);
}

/** The body of a ring. The corners of a box are made as points only on request, because most are never needed. */
class RingBody {
  readonly kind = 'ring';
  readonly flat: Float64Array;
  readonly extent: Extent;
  #ring: Ring | null;

  constructor(flat: Float64Array, ring: Ring | null) {
    this.flat = flat;
    this.extent = flatExtent(flat);
    this.#ring = ring;
  }

  get ring(): Ring {
    this.#ring ??= cornersOf(this.flat);
    return this.#ring;
  }
}

function flatRing(ring: Ring): Float64Array {
  const flat = new Float64Array(ring.length * 2);
  for (let i = 0; i < ring.length; i++) {
    const corner = ring[i] as XY;
    flat[2 * i] = corner[0];
    flat[2 * i + 1] = corner[1];
  }
  return flat;
}

function cornersOf(flat: Float64Array): Ring {
  const ring: XY[] = [];
  for (let i = 0; i < flat.length; i += 2) ring.push([flat[i] as number, flat[i + 1] as number]);
  return ring;
}

/** Returns whether a ring runs clockwise on screen and no corner repeats the one before. */
function isTidy(flat: Float64Array): boolean {
  if (flat.length < 4 || flatArea(flat) < 0) return false;
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    // Written so that NaN is not tidy.
    if (!(vectorLength(bx - ax, by - ay) > CORNER_TOLERANCE)) return false;
    ax = bx;
    ay = by;
  }
  return true;
}

/** `signedArea` of a flat ring. */
export function flatArea(flat: Float64Array): number {
  const ox = flat[flat.length - 2] as number;
  const oy = flat[flat.length - 1] as number;
  let sum = 0;
  let ax = ox;
  let ay = oy;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    sum += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
    ax = bx;
    ay = by;
  }
  return sum / 2;
}

/** Returns the body of a fixture's or an object's shape; memoized by the identity of the shape. */
export const shapeBody: (shape: Shape) => Body = memoize(buildShapeBody);

function buildShapeBody(shape: Shape): Body {
  if ('circle' in shape) {
    const { center, radius } = shape.circle;
    return { kind: 'disc', x: center[0], y: center[1], radius, extent: discExtent(center[0], center[1], radius) };
  }
  return 'box' in shape ? boxBody(shape) : ringBody(shapeRing(shape));
}

function boxBody(shape: Extract<Shape, { readonly box: unknown }>): Body {
  const flat = flatBox(shape.box);
  return isTidy(flat) ? new RingBody(flat, null) : ringBody(cornersOf(flat));
}

function flatBox({ center: [x, y], width, depth, turn }: Box): Float64Array {
  const cos = Math.cos(turn * RADIANS);
  const sin = Math.sin(turn * RADIANS);
  const dx = width / 2;
  const dy = depth / 2;
  const flat = new Float64Array(8);
  flat[0] = x + -dx * cos - -dy * sin;
  flat[1] = y + -dx * sin + -dy * cos;
  flat[2] = x + dx * cos - -dy * sin;
  flat[3] = y + dx * sin + -dy * cos;
  flat[4] = x + dx * cos - dy * sin;
  flat[5] = y + dx * sin + dy * cos;
  flat[6] = x + -dx * cos - dy * sin;
  flat[7] = y + -dx * sin + dy * cos;
  return flat;
}

/** Returns the corners of a box or polygon in order, or the four extreme points of a circle. */
export function shapeRing(shape: Shape): Ring {
  if ('polygon' in shape) return shape.polygon.points;
  if ('circle' in shape) {
    const { center, radius } = shape.circle;
    const [x, y] = center;
    return [
      [x - radius, y],
      [x, y - radius],
      [x + radius, y],
      [x, y + radius],
    ];
  }
  return cornersOf(flatBox(shape.box));
}

/** Returns the center of a circle or box, or the center of a polygon's bounding box. */
export function shapeMiddle(shape: Shape): XY {
  if ('circle' in shape) return shape.circle.center;
  if ('box' in shape) return shape.box.center;
  const { minX, minY, maxX, maxY } = ringExtent(shape.polygon.points);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

/**
 * Returns the sector that a stream covers from the middle of its fixture: a disc for a spread of 360° or more, a point
 * for a stream without reach.
 */
export function streamBody(stream: Stream, shape: Shape): Body {
  const [x, y] = shapeMiddle(shape);
  const half = Math.min(Math.max(stream.spread, 0), 360) * 0.5 * RADIANS;
  if (half >= Math.PI || stream.reach <= CORNER_TOLERANCE) {
    return { kind: 'disc', x, y, radius: stream.reach, extent: discExtent(x, y, stream.reach) };
  }
  const direction = stream.direction * RADIANS;
  return { kind: 'sector', x, y, direction, half, reach: stream.reach, extent: discExtent(x, y, stream.reach) };
}

/** Returns the distance from (x, y) to the body, mm; 0 inside and on the boundary. */
export function bodyDistance(body: Body, x: Mm, y: Mm): Mm {
  switch (body.kind) {
    case 'disc':
      return Math.max(0, vectorLength(x - body.x, y - body.y) - body.radius);
    case 'ring':
      return ringDistance(body.flat, x, y);
    case 'sector':
      return Math.max(0, sectorClearance(body, x, y));
  }
}

/** Returns the signed distance to the body, mm: positive outside, negative inside. */
export function signedBodyDistance(body: Body, x: Mm, y: Mm): Mm {
  switch (body.kind) {
    case 'disc':
      return vectorLength(x - body.x, y - body.y) - body.radius;
    case 'ring': {
      const outside = ringDistance(body.flat, x, y);
      if (outside > 0 || !ringContains(body.ring, [x, y])) return outside;
      const [qx, qy] = nearestOnRing([x, y], body.ring);
      return -Math.hypot(qx - x, qy - y);
    }
    case 'sector':
      return sectorClearance(body, x, y);
  }
}

/** Returns the point of the body nearest to p; p itself when it is inside. */
export function nearestOnBody(body: Body, p: XY): XY {
  if (bodyDistance(body, p[0], p[1]) === 0) return p;
  if (body.kind === 'disc') return toward([body.x, body.y], p, body.radius);
  if (body.kind === 'ring') return nearestOnRing(p, body.ring);
  const angle = turnBetween(body.direction, Math.atan2(p[1] - body.y, p[0] - body.x));
  if (Math.abs(angle) <= body.half) return toward([body.x, body.y], p, body.reach);
  const side = body.direction + (angle < 0 ? -body.half : body.half);
  const ux = Math.cos(side);
  const uy = Math.sin(side);
  const t = Math.min(body.reach, Math.max(0, (p[0] - body.x) * ux + (p[1] - body.y) * uy));
  return [body.x + ux * t, body.y + uy * t];
}

/** Returns the ring without consecutive duplicate corners; at least one corner remains. */
function withoutDuplicates(ring: Ring): Ring {
  const corners: XY[] = [];
  for (const p of ring) {
    const last = corners[corners.length - 1];
    if (!last || distance(p, last) > CORNER_TOLERANCE) corners.push(p);
  }
  const [first] = corners;
  const last = corners[corners.length - 1];
  if (first && last && corners.length > 1 && distance(first, last) <= CORNER_TOLERANCE) corners.pop();
  return corners;
}

/** Computes the least squared distance and the even-odd crossing count in one pass over the edges. */
function ringDistance(flat: Float64Array, x: Mm, y: Mm): Mm {
  let leastSq = Number.POSITIVE_INFINITY;
  let inside = false;
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const dx = bx - ax;
    const dy = by - ay;
    const px = x - ax;
    const py = y - ay;
    const lengthSq = dx * dx + dy * dy;
    const t = lengthSq > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / lengthSq)) : 0;
    const ex = px - t * dx;
    const ey = py - t * dy;
    const sq = ex * ex + ey * ey;
    if (sq < leastSq) leastSq = sq;
    if (ay > y !== by > y && px * (by - ay) < dx * py === by > ay) inside = !inside;
    ax = bx;
    ay = by;
  }
  return inside ? 0 : Math.sqrt(leastSq);
}

function sectorClearance(body: Extract<Body, { kind: 'sector' }>, x: Mm, y: Mm): Mm {
  const dx = x - body.x;
  const dy = y - body.y;
  const out = vectorLength(dx, dy);
  const angle = Math.abs(turnBetween(body.direction, Math.atan2(dy, dx)));
  if (angle <= body.half) {
    if (out > body.reach) return out - body.reach;
    const toSide = body.half - angle;
    return -Math.min(body.reach - out, toSide < Math.PI / 2 ? out * Math.sin(toSide) : out);
  }
  // Outside the angle: the nearest side is a segment from the apex.
  const off = angle - body.half;
  const t = Math.min(body.reach, Math.max(0, out * Math.cos(off)));
  return vectorLength(out * Math.sin(off), out * Math.cos(off) - t);
}

/** Returns the signed angle from one direction to another, radians in −π…π. */
export function turnBetween(from: number, to: number): number {
  const turn = (to - from) % (2 * Math.PI);
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}

function toward(from: XY, to: XY, length: Mm): XY {
  const d = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const t = d > 0 ? length / d : 0;
  return [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
}
