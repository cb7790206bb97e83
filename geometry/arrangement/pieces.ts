import type { Mm } from '../plane/types.ts';

/**
 * Boundary pieces are stored in one flat array, `STRIDE` numbers each, for the speed of the inner loops. A piece is a
 * line or an arc with its zone on the right; an arc runs clockwise on screen (`SWEEP` > 0). A line has `RADIUS` 0.
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

/** A shorter piece is rounding, mm. */
export const SHORTEST_PIECE = 1e-9;

const QUARTER = Math.PI / 2;

/** A growing array of flat pieces. */
export class Pieces {
  /** The buffer; only the first `length` numbers are valid. */
  data: Float64Array;
  length = 0;

  /** @param count expected number of pieces */
  constructor(count: number) {
    this.data = new Float64Array(count * STRIDE);
  }

  /** Reserves space for one piece and returns its offset. */
  append(): number {
    const at = this.length;
    if (at + STRIDE > this.data.length) {
      const grown = new Float64Array(Math.max(16 * STRIDE, this.data.length * 2));
      grown.set(this.data);
      this.data = grown;
    }
    this.length = at + STRIDE;
    return at;
  }

  line(x0: Mm, y0: Mm, x1: Mm, y1: Mm): void {
    const at = this.append();
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

  /** An arc with precomputed ends. */
  arcBetween(cx: Mm, cy: Mm, radius: Mm, start: number, sweep: number, x0: Mm, y0: Mm, x1: Mm, y1: Mm): void {
    this.line(x0, y0, x1, y1);
    const { data } = this;
    const at = this.length - STRIDE;
    data[at + CX] = cx;
    data[at + CY] = cy;
    data[at + RADIUS] = radius;
    data[at + START] = start;
    data[at + SWEEP] = sweep;
    // Extends the bounding box by the extreme points of the circle that lie on the arc.
    const end = start + sweep;
    for (let quarter = Math.ceil(start / QUARTER); quarter * QUARTER <= end; quarter++) {
      const side = quarter & 3;
      if (side === 0) data[at + MAX_X] = cx + radius;
      else if (side === 1) data[at + MAX_Y] = cy + radius;
      else if (side === 2) data[at + MIN_X] = cx - radius;
      else data[at + MIN_Y] = cy - radius;
    }
  }

  /** Appends a piece of another array. */
  copy(p: Float64Array, k: number): void {
    const at = this.append();
    const { data } = this;
    for (let m = 0; m < STRIDE; m++) data[at + m] = p[k + m] as number;
  }
}

/**
 * Returns whether the tangents at the ends of an arc meet at a usable point; near half a turn they meet too far away.
 */
export function hasApex(p: Float64Array, k: number): boolean {
  return at(p, k + SWEEP) < 3;
}

/** Returns the x of the point where the tangents at the ends of an arc meet, mm; see `hasApex`. `k` is the offset of the piece. */
export function apexX(p: Float64Array, k: number): Mm {
  const half = at(p, k + SWEEP) / 2;
  return at(p, k + CX) + (at(p, k + RADIUS) / Math.cos(half)) * Math.cos(at(p, k + START) + half);
}

/** Returns the y of that point, mm. */
export function apexY(p: Float64Array, k: number): Mm {
  const half = at(p, k + SWEEP) / 2;
  return at(p, k + CY) + (at(p, k + RADIUS) / Math.cos(half)) * Math.sin(at(p, k + START) + half);
}

/** Returns the x of the point of a piece at the parameter `t`, 0…1, mm. */
export function pieceX(p: Float64Array, k: number, t: number): Mm {
  return at(p, k + RADIUS) > 0
    ? at(p, k + CX) + at(p, k + RADIUS) * Math.cos(at(p, k + START) + at(p, k + SWEEP) * t)
    : at(p, k + X0) + (at(p, k + X1) - at(p, k + X0)) * t;
}

/** Returns the y of that point, mm. */
export function pieceY(p: Float64Array, k: number, t: number): Mm {
  return at(p, k + RADIUS) > 0
    ? at(p, k + CY) + at(p, k + RADIUS) * Math.sin(at(p, k + START) + at(p, k + SWEEP) * t)
    : at(p, k + Y0) + (at(p, k + Y1) - at(p, k + Y0)) * t;
}

/** Returns the length of a piece, mm. */
export function pieceLength(p: Float64Array, k: number): Mm {
  if (at(p, k + RADIUS) > 0) return at(p, k + RADIUS) * at(p, k + SWEEP);
  const dx = at(p, k + X1) - at(p, k + X0);
  const dy = at(p, k + Y1) - at(p, k + Y0);
  return Math.sqrt(dx * dx + dy * dy);
}

/** Appends the part of a piece between two parameters, 0…1. */
export function pushSubPiece(out: Pieces, p: Float64Array, k: number, from: number, to: number): void {
  if (at(p, k + RADIUS) > 0) {
    const sweep = at(p, k + SWEEP);
    out.arc(at(p, k + CX), at(p, k + CY), at(p, k + RADIUS), at(p, k + START) + sweep * from, sweep * (to - from));
  } else out.line(pieceX(p, k, from), pieceY(p, k, from), pieceX(p, k, to), pieceY(p, k, to));
}

export function at(p: Float64Array, i: number): number {
  return p[i] as number;
}

/** Returns whether a piece lies wholly outside one of the half-planes of a hull. */
export function isBeyond(hull: Float64Array, p: Float64Array, k: number): boolean {
  if (hull.length === 0) return false;
  const arc = at(p, k + RADIUS) > 0;
  if (arc && !hasApex(p, k)) return false;
  const ax = arc ? apexX(p, k) : at(p, k + X0);
  const ay = arc ? apexY(p, k) : at(p, k + Y0);
  for (let h = 0; h < hull.length; h += 3) {
    const nx = at(hull, h);
    const ny = at(hull, h + 1);
    const c = at(hull, h + 2);
    if (nx * at(p, k + X0) + ny * at(p, k + Y0) <= c) continue;
    if (nx * at(p, k + X1) + ny * at(p, k + Y1) <= c) continue;
    if (nx * ax + ny * ay > c) return true;
  }
  return false;
}

/** Returns the unit normal toward the free side: left of the direction, counter-clockwise on screen. */
export function freeSide(p: Float64Array, k: number, t: number): [number, number] {
  if (at(p, k + RADIUS) > 0) {
    const angle = at(p, k + START) + at(p, k + SWEEP) * t;
    return [Math.cos(angle), Math.sin(angle)];
  }
  const length = pieceLength(p, k);
  return [(at(p, k + Y1) - at(p, k + Y0)) / length, -(at(p, k + X1) - at(p, k + X0)) / length];
}
