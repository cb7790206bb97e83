import type { Body } from '../plane/body.ts';
import type { Mm } from '../plane/types.ts';

/**
 * Boundary pieces lie flat, `STRIDE` numbers each, in one array: the inner loops read nothing else. A piece is a line or an
 * arc with its zone on the right; an arc runs clockwise on screen (`SWEEP` > 0). A line has `RADIUS` 0.
 */
export const STRIDE = 13;
export const X0 = 0;
export const Y0 = 1;
export const X1 = 2;
export const Y1 = 3;
export const CX = 4;
export const CY = 5;
export const RADIUS = 6;
/** Radians. */
export const START = 7;
export const SWEEP = 8;
export const MIN_X = 9;
export const MIN_Y = 10;
export const MAX_X = 11;
export const MAX_Y = 12;

const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;
/** A corner that turns by less, radians, needs no arc. */
const STRAIGHT = 1e-12;

/** Flat pieces that are added one by one. */
export class Pieces {
  /** Holds more than `length` numbers: what lies beyond is not meant. */
  data: Float64Array;
  length = 0;

  /** @param count how many pieces there will be, more or less */
  constructor(count: number) {
    this.data = new Float64Array(count * STRIDE);
  }

  /** The numbers of one more piece: the place of the first. */
  more(): number {
    const at = this.length;
    if (at + STRIDE > this.data.length) {
      const grown = new Float64Array(Math.max(16 * STRIDE, this.data.length * 2));
      grown.set(this.data);
      this.data = grown;
    }
    this.length = at + STRIDE;
    return at;
  }

  /** The pieces alone; shares memory when nothing lies beyond them. */
  taken(): Float64Array {
    return this.length === this.data.length ? this.data : this.data.slice(0, this.length);
  }

  line(x0: Mm, y0: Mm, x1: Mm, y1: Mm): void {
    const at = this.more();
    const { data } = this;
    data[at + X0] = x0;
    data[at + Y0] = y0;
    data[at + X1] = x1;
    data[at + Y1] = y1;
    data[at + CX] = 0;
    data[at + CY] = 0;
    data[at + RADIUS] = 0;
    data[at + START] = 0;
    data[at + SWEEP] = 0;
    data[at + MIN_X] = Math.min(x0, x1);
    data[at + MIN_Y] = Math.min(y0, y1);
    data[at + MAX_X] = Math.max(x0, x1);
    data[at + MAX_Y] = Math.max(y0, y1);
  }

  /** An arc, `sweep` ≥ 0. */
  arc(cx: Mm, cy: Mm, radius: Mm, start: number, sweep: number): void {
    const end = start + sweep;
    const x0 = cx + radius * Math.cos(start);
    const y0 = cy + radius * Math.sin(start);
    const x1 = cx + radius * Math.cos(end);
    const y1 = cy + radius * Math.sin(end);
    this.arcBetween(cx, cy, radius, start, sweep, x0, y0, x1, y1);
  }

  /** An arc whose ends are known already. */
  arcBetween(cx: Mm, cy: Mm, radius: Mm, start: number, sweep: number, x0: Mm, y0: Mm, x1: Mm, y1: Mm): void {
    this.line(x0, y0, x1, y1);
    const { data } = this;
    const at = this.length - STRIDE;
    data[at + CX] = cx;
    data[at + CY] = cy;
    data[at + RADIUS] = radius;
    data[at + START] = start;
    data[at + SWEEP] = sweep;
    // The extreme points of the circle that the arc passes, quarter by quarter.
    const end = start + sweep;
    for (let quarter = Math.ceil(start / QUARTER); quarter * QUARTER <= end; quarter++) {
      const side = quarter & 3;
      if (side === 0) data[at + MAX_X] = cx + radius;
      else if (side === 1) data[at + MAX_Y] = cy + radius;
      else if (side === 2) data[at + MIN_X] = cx - radius;
      else data[at + MIN_Y] = cy - radius;
    }
  }

  /** A piece of another array. */
  copy(p: Float64Array, k: number): void {
    const at = this.more();
    const { data } = this;
    for (let m = 0; m < STRIDE; m++) data[at + m] = p[k + m] as number;
  }
}

/**
 * The boundary of a body grown by `grow` ≥ 0 mm, as flat pieces with the grown body on the right. The pieces of a body that
 * is not convex cross each other: the boundary is what is left after cutting.
 */
export function grownOutline(body: Body, grow: Mm): Float64Array {
  const out = new Pieces(mostPieces(body, grow));
  if (body.kind === 'ring') grownRing(out, body.flat, grow);
  else if (body.kind === 'sector') grownSector(out, body, grow);
  else if (body.radius + grow > 0) {
    // In quarters, which are covered or cut more locally than a whole circle.
    for (let quarter = -2; quarter < 2; quarter++) {
      out.arc(body.x, body.y, body.radius + grow, quarter * QUARTER, QUARTER);
    }
  }
  return out.taken();
}

/** An edge, and an arc at its corner, of a ring; what the others have at most. */
function mostPieces(body: Body, grow: Mm): number {
  if (body.kind === 'ring') return grow > 0 ? body.flat.length : body.flat.length / 2;
  return body.kind === 'sector' ? 6 : 4;
}

function grownRing(out: Pieces, flat: Float64Array, grow: Mm): void {
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
      out.arcBetween(ax, ay, grow, before - QUARTER, turn, ax + mx, ay + my, ax + nx, ay + ny);
    }
    out.line(ax + nx, ay + ny, bx + nx, by + ny);
    before = angle;
    mx = nx;
    my = ny;
    ax = bx;
    ay = by;
  }
}

/**
 * The boundary of what lies at least `depth` mm inside a ring, as flat pieces with that part on the left: the other way round
 * than the ring. Pieces cross at its convex corners: the boundary is what is left after cutting.
 */
export function insetOutline(flat: Float64Array, depth: Mm): Float64Array {
  const end = flat.length;
  const out = new Pieces(end);
  let ax = flat[end - 2] as number;
  let ay = flat[end - 1] as number;
  let before = Math.atan2(ay - (flat[end - 3] as number), ax - (flat[end - 4] as number));
  for (let i = 0; i < end; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const angle = Math.atan2(by - ay, bx - ax);
    const nx = -Math.sin(angle) * depth;
    const ny = Math.cos(angle) * depth;
    const turn = cornerTurn(before, angle);
    // At a corner that points inwards an arc, its centre in the corner.
    if (depth > 0 && turn < -STRAIGHT) out.arc(ax, ay, depth, angle + QUARTER, -turn);
    out.line(bx + nx, by + ny, ax + nx, ay + ny);
    before = angle;
    ax = bx;
    ay = by;
  }
  return out.taken();
}

/** The turn at a corner, clockwise positive. Turning straight back counts as a half turn round the end. */
function cornerTurn(before: number, after: number): number {
  const turn = (after - before) % TURN;
  if (turn > Math.PI + STRAIGHT) return turn - TURN;
  return turn < -Math.PI + 1e-9 ? turn + TURN : turn;
}

function grownSector(out: Pieces, body: Extract<Body, { kind: 'sector' }>, grow: Mm): void {
  const { x, y, direction, half, reach } = body;
  const from = direction - half;
  const to = direction + half;
  straightSide(out, body, from, grow, true);
  if (grow > 0) out.arc(x + Math.cos(from) * reach, y + Math.sin(from) * reach, grow, from - QUARTER, QUARTER);
  if (half > 0) out.arc(x, y, reach + grow, from, 2 * half);
  if (grow > 0) out.arc(x + Math.cos(to) * reach, y + Math.sin(to) * reach, grow, to, QUARTER);
  straightSide(out, body, to, grow, false);
  const atApex = Math.PI - 2 * half;
  if (grow > 0 && atApex > STRAIGHT) out.arc(x, y, grow, to + QUARTER, atApex);
}

/** A straight side of a sector, grown: the way out along the one, the way back along the other. */
function straightSide(
  out: Pieces,
  { x, y, reach }: Extract<Body, { kind: 'sector' }>,
  angle: number,
  grow: Mm,
  outward: boolean,
): void {
  const normal = outward ? angle - QUARTER : angle + QUARTER;
  const nx = Math.cos(normal) * grow;
  const ny = Math.sin(normal) * grow;
  const fx = x + Math.cos(angle) * reach;
  const fy = y + Math.sin(angle) * reach;
  if (outward) out.line(x + nx, y + ny, fx + nx, fy + ny);
  else out.line(fx + nx, fy + ny, x + nx, y + ny);
}

/** Whether a body is convex, so that the pieces of its outline never cross each other. */
export function isConvex(body: Body): boolean {
  if (body.kind === 'disc') return true;
  if (body.kind === 'sector') return body.half <= QUARTER;
  const { flat } = body;
  const end = flat.length;
  let px = flat[end - 4] as number;
  let py = flat[end - 3] as number;
  let x = flat[end - 2] as number;
  let y = flat[end - 1] as number;
  for (let i = 0; i < end; i += 2) {
    const nx = flat[i] as number;
    const ny = flat[i + 1] as number;
    if ((x - px) * (ny - y) - (y - py) * (nx - x) < 0) return false;
    px = x;
    py = y;
    x = nx;
    y = ny;
  }
  return true;
}
