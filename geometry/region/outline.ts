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
  const low = Math.min(start, end);
  const high = Math.max(start, end);
  // Which of the four extreme points of the circle the arc passes.
  const passes = (angle: number) => Math.ceil((low - angle) / TURN) * TURN + angle <= high;
  return {
    zone,
    x0,
    y0,
    x1,
    y1,
    cx,
    cy,
    radius,
    start,
    sweep,
    minX: passes(Math.PI) ? cx - radius : Math.min(x0, x1),
    minY: passes(-QUARTER) ? cy - radius : Math.min(y0, y1),
    maxX: passes(0) ? cx + radius : Math.max(x0, x1),
    maxY: passes(QUARTER) ? cy + radius : Math.max(y0, y1),
  };
}

/**
 * The boundary of a body grown by `grow` ≥ 0 mm, as pieces with the grown body on the right. The pieces of a body that is
 * not convex cross each other: the boundary is what is left after cutting.
 */
export function grownOutline(body: Body, grow: Mm, zone: number): Piece[] {
  if (body.kind === 'disc') {
    const radius = body.radius + grow;
    if (radius <= 0) return [];
    return [
      arcPiece(zone, body.x, body.y, radius, -Math.PI, Math.PI),
      arcPiece(zone, body.x, body.y, radius, 0, Math.PI),
    ];
  }
  return body.kind === 'ring' ? grownRing(body.flat, grow, zone) : grownSector(body, grow, zone);
}

function grownRing(flat: Float64Array, grow: Mm, zone: number): Piece[] {
  const pieces: Piece[] = [];
  const count = flat.length / 2;
  const at = (i: number) => flat[i] as number;
  let before = Math.atan2(at(1) - at(2 * count - 1), at(0) - at(2 * count - 2));
  for (let i = 0; i < count; i++) {
    const k = (i + 1) % count;
    const ax = at(2 * i);
    const ay = at(2 * i + 1);
    const bx = at(2 * k);
    const by = at(2 * k + 1);
    const angle = Math.atan2(by - ay, bx - ax);
    const turn = cornerTurn(before, angle);
    // The outward normal lies a quarter turn counter-clockwise on screen of the direction.
    if (grow > 0 && turn > STRAIGHT) pieces.push(arcPiece(zone, ax, ay, grow, before - QUARTER, turn));
    const nx = Math.sin(angle) * grow;
    const ny = -Math.cos(angle) * grow;
    pieces.push(linePiece(zone, ax + nx, ay + ny, bx + nx, by + ny));
    before = angle;
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
