import type { Body } from '../plane/body.ts';
import type { Mm } from '../plane/types.ts';
import type { Pieces } from './pieces.ts';

const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;
/** A corner with a smaller exterior angle needs no arc, radians. */
const STRAIGHT_ANGLE = 1e-12;

/**
 * Adds the boundary of the Minkowski sum of a body and a disc of radius `grow` ≥ 0 mm, as flat pieces with the
 * grown body on the right. For a body that is not convex the pieces cross each other: the boundary is what remains
 * after cutting.
 */
export function addGrownOutline(out: Pieces, body: Body, grow: Mm): void {
  if (body.kind === 'ring') grownRing(out, body.flat, grow);
  else if (body.kind === 'sector') grownSector(out, body, grow);
  else if (body.radius + grow > 0) {
    // In quarters, which are covered or cut more locally than a full circle.
    for (let quarter = -2; quarter < 2; quarter++) {
      out.arc(body.x, body.y, body.radius + grow, quarter * QUARTER, QUARTER);
    }
  }
}

/** Returns the most pieces of a grown outline: for a ring one edge and one arc per corner. */
export function mostGrownPieces(body: Body, grow: Mm): number {
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
  // The outward normal of the previous edge times `grow`: a quarter turn counter-clockwise on screen from its
  // direction.
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
    if (grow > 0 && turn > STRAIGHT_ANGLE) {
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
 * Adds the boundary of the set of points at least `depth` mm inside a ring, as flat pieces with that set on the
 * left, opposite to the ring's orientation. Pieces cross at convex corners: the boundary is what remains after
 * cutting.
 */
export function addInsetOutline(out: Pieces, flat: Float64Array, depth: Mm): void {
  const end = flat.length;
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
    // At a reflex corner, an arc around the corner.
    if (depth > 0 && turn < -STRAIGHT_ANGLE) out.arc(ax, ay, depth, angle + QUARTER, -turn);
    out.line(bx + nx, by + ny, ax + nx, ay + ny);
    before = angle;
    ax = bx;
    ay = by;
  }
}

/** Returns the most pieces of an inset outline: one edge and one arc per corner. */
export function mostInsetPieces(flat: Float64Array): number {
  return flat.length;
}

/** Returns the exterior angle at a corner, clockwise positive. A reversal counts as half a turn around the end. */
function cornerTurn(before: number, after: number): number {
  const turn = (after - before) % TURN;
  if (turn > Math.PI + STRAIGHT_ANGLE) return turn - TURN;
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
  if (grow > 0 && atApex > STRAIGHT_ANGLE) out.arc(x, y, grow, to + QUARTER, atApex);
}

/** A straight side of a sector, grown: out along one side, back along the other. */
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

/** Returns whether a body is convex, so that the pieces of its outline do not cross. */
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
