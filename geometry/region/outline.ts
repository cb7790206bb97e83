import type { Body } from '../body.ts';
import type { Mm } from '../plan/model.ts';

/**
 * A straight or circular piece of the boundary of one zone, with the zone to its right. One shape of object for both, so
 * that the inner loops stay fast. For a line, `radius` is 0.
 */
export interface Piece {
  readonly zone: number;
  readonly x0: Mm;
  readonly y0: Mm;
  readonly x1: Mm;
  readonly y1: Mm;
  readonly cx: Mm;
  readonly cy: Mm;
  readonly radius: Mm;
  /** Radians; `sweep` is positive clockwise on screen. */
  readonly start: number;
  readonly sweep: number;
  readonly minX: Mm;
  readonly minY: Mm;
  readonly maxX: Mm;
  readonly maxY: Mm;
}

const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;
/** A corner that turns by less, radians, needs no arc. */
const STRAIGHT = 1e-12;

export function linePiece(zone: number, x0: Mm, y0: Mm, x1: Mm, y1: Mm): Piece {
  return {
    zone,
    x0,
    y0,
    x1,
    y1,
    cx: 0,
    cy: 0,
    radius: 0,
    start: 0,
    sweep: 0,
    minX: Math.min(x0, x1),
    minY: Math.min(y0, y1),
    maxX: Math.max(x0, x1),
    maxY: Math.max(y0, y1),
  };
}

export function arcPiece(zone: number, cx: Mm, cy: Mm, radius: Mm, start: number, sweep: number): Piece {
  const end = start + sweep;
  const x0 = cx + radius * Math.cos(start);
  const y0 = cy + radius * Math.sin(start);
  const x1 = cx + radius * Math.cos(end);
  const y1 = cy + radius * Math.sin(end);
  return arcBetween(zone, cx, cy, radius, start, sweep, x0, y0, x1, y1);
}

/** An arc whose ends are known already; `sweep` ≥ 0. */
function arcBetween(
  zone: number,
  cx: Mm,
  cy: Mm,
  radius: Mm,
  start: number,
  sweep: number,
  x0: Mm,
  y0: Mm,
  x1: Mm,
  y1: Mm,
): Piece {
  let minX = Math.min(x0, x1);
  let minY = Math.min(y0, y1);
  let maxX = Math.max(x0, x1);
  let maxY = Math.max(y0, y1);
  // The extreme points of the circle that the arc passes, quarter by quarter.
  const end = start + sweep;
  for (let quarter = Math.ceil(start / QUARTER); quarter * QUARTER <= end; quarter++) {
    const side = quarter & 3;
    if (side === 0) maxX = cx + radius;
    else if (side === 1) maxY = cy + radius;
    else if (side === 2) minX = cx - radius;
    else minY = cy - radius;
  }
  return { zone, x0, y0, x1, y1, cx, cy, radius, start, sweep, minX, minY, maxX, maxY };
}

/**
 * The boundary of a body grown by `grow` ≥ 0 mm, as pieces with the grown body on the right. The pieces of a body that is
 * not convex cross each other: the boundary is what is left after cutting.
 */
export function grownOutline(body: Body, grow: Mm, zone: number): Piece[] {
  if (body.kind === 'disc') {
    const radius = body.radius + grow;
    if (radius <= 0) return [];
    // In quarters, which are covered or cut more locally than a whole circle.
    return [-2, -1, 0, 1].map((quarter) => arcPiece(zone, body.x, body.y, radius, quarter * QUARTER, QUARTER));
  }
  return body.kind === 'ring' ? grownRing(body.flat, grow, zone) : grownSector(body, grow, zone);
}

function grownRing(flat: Float64Array, grow: Mm, zone: number): Piece[] {
  const pieces: Piece[] = [];
  const end = flat.length;
  let ax = flat[end - 2] as number;
  let ay = flat[end - 1] as number;
  let px = ax - (flat[end - 4] as number);
  let py = ay - (flat[end - 3] as number);
  let length = Math.sqrt(px * px + py * py);
  // The outward normal of the edge before, grown: it lies a quarter turn counter-clockwise on screen of the direction.
  let mx = (py / length) * grow;
  let my = (-px / length) * grow;
  let before = Math.atan2(py, px);
  for (let i = 0; i < end; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    px = bx - ax;
    py = by - ay;
    length = Math.sqrt(px * px + py * py);
    const nx = (py / length) * grow;
    const ny = (-px / length) * grow;
    const angle = Math.atan2(py, px);
    const turn = cornerTurn(before, angle);
    if (grow > 0 && turn > STRAIGHT) {
      pieces.push(arcBetween(zone, ax, ay, grow, before - QUARTER, turn, ax + mx, ay + my, ax + nx, ay + ny));
    }
    pieces.push(linePiece(zone, ax + nx, ay + ny, bx + nx, by + ny));
    before = angle;
    mx = nx;
    my = ny;
    ax = bx;
    ay = by;
  }
  return pieces;
}

/** The turn at a corner, clockwise positive. Turning straight back counts as a half turn round the end. */
function cornerTurn(before: number, after: number): number {
  const turn = (after - before) % TURN;
  if (turn > Math.PI + STRAIGHT) return turn - TURN;
  return turn < -Math.PI + 1e-9 ? turn + TURN : turn;
}

function grownSector(body: Extract<Body, { kind: 'sector' }>, grow: Mm, zone: number): Piece[] {
  const { x, y, direction, half, reach } = body;
  const from = direction - half;
  const to = direction + half;
  const pieces: Piece[] = [];
  const straight = (angle: number, out: boolean) => {
    // Outward normal of the way out along `from`, and of the way back along `to`.
    const normal = out ? angle - QUARTER : angle + QUARTER;
    const nx = Math.cos(normal) * grow;
    const ny = Math.sin(normal) * grow;
    const fx = x + Math.cos(angle) * reach;
    const fy = y + Math.sin(angle) * reach;
    pieces.push(
      out ? linePiece(zone, x + nx, y + ny, fx + nx, fy + ny) : linePiece(zone, fx + nx, fy + ny, x + nx, y + ny),
    );
  };
  straight(from, true);
  if (grow > 0)
    pieces.push(arcPiece(zone, x + Math.cos(from) * reach, y + Math.sin(from) * reach, grow, from - QUARTER, QUARTER));
  if (half > 0) pieces.push(arcPiece(zone, x, y, reach + grow, from, 2 * half));
  if (grow > 0) pieces.push(arcPiece(zone, x + Math.cos(to) * reach, y + Math.sin(to) * reach, grow, to, QUARTER));
  straight(to, false);
  const atApex = Math.PI - 2 * half;
  if (grow > 0 && atApex > STRAIGHT) pieces.push(arcPiece(zone, x, y, grow, to + QUARTER, atApex));
  return pieces;
}

/** Whether a body is convex, so that the pieces of its outline never cross each other. */
export function isConvex(body: Body): boolean {
  if (body.kind === 'disc') return true;
  if (body.kind === 'sector') return body.half <= QUARTER;
  const { ring } = body;
  return ring.every(([x, y], i) => {
    const [px, py] = ring[(i + ring.length - 1) % ring.length] as readonly [Mm, Mm];
    const [nx, ny] = ring[(i + 1) % ring.length] as readonly [Mm, Mm];
    return (x - px) * (ny - y) - (y - py) * (nx - x) >= 0;
  });
}
