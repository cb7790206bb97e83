import { type Body, bodyDistance, signedBodyDistance } from '../plane/body.ts';
import type { Mm } from '../plane/types.ts';
import { cutPair } from './crossings.ts';
import { Cuts } from './cuts.ts';
import type { Hole } from './hole.ts';
import { holds, MANY_ZONES, ManyZones, SAME_LINE } from './many-zones.ts';
import {
  CX,
  CY,
  grownOutline,
  insetOutline,
  isConvex,
  MAX_X,
  MAX_Y,
  MIN_X,
  MIN_Y,
  Pieces,
  RADIUS,
  START,
  STRIDE,
  SWEEP,
  X0,
  X1,
  Y0,
  Y1,
} from './outline.ts';
import type { Grown, Space } from './zone.ts';

/** A sub-piece below this, mm, is rounding. */
const SHORTEST = 1e-9;

/** The whole page. */
export const EVERYWHERE: Space = {
  extent: {
    minX: Number.NEGATIVE_INFINITY,
    minY: Number.NEGATIVE_INFINITY,
    maxX: Number.POSITIVE_INFINITY,
    maxY: Number.POSITIVE_INFINITY,
  },
  hull: new Float64Array(0),
  accepts: () => true,
};

/** A body grown by `grow` mm, less a hole in it. */
export function grown(body: Body, grow: Mm, hole: Hole | null = null): Grown {
  const outline = grownOutline(body, grow);
  return {
    body,
    grow,
    hole,
    outline: hole ? withHole(outline, hole) : outline,
    convex: !hole && isConvex(body),
    minX: body.extent.minX - grow,
    minY: body.extent.minY - grow,
    maxX: body.extent.maxX + grow,
    maxY: body.extent.maxY + grow,
  };
}

function withHole(outline: Float64Array, { body, depth }: Hole): Float64Array {
  const inset = body.kind === 'ring' ? insetOutline(body.flat, depth) : new Float64Array(0);
  const both = new Float64Array(outline.length + inset.length);
  both.set(outline);
  both.set(inset, outline.length);
  return both;
}

/** How far a point lies outside a zone, mm; negative within it. */
function zoneDistance({ body, grow, hole }: Grown, x: Mm, y: Mm): Mm {
  const outside = bodyDistance(body, x, y) - grow;
  return hole === null || outside >= 0 ? outside : Math.max(outside, -signedBodyDistance(hole.body, x, y) - hole.depth);
}

/** Memory for `freeBoundary`, to be used again from call to call: most of a call would go into asking for it. */
export class Scratch {
  readonly pieces = new Pieces(0);
  readonly kept = new Pieces(0);
  readonly cuts = new Cuts();
  owner = new Int32Array(0);
  order = new Int32Array(0);
  boxes = new Float64Array(0);
}

/**
 * The parts of the zones' boundaries that no zone covers: the boundary of what is free, as flat pieces with the zones on
 * their right and the free side on their left. They lie in the scratch memory: the next call that uses it overwrites them.
 *
 * Where boundaries run on one another with their zones on the same side one part is kept, with their zones on opposite
 * sides none: nothing is free between them.
 */
export function freeBoundary(zones: readonly Grown[], space: Space, scratch = new Scratch()): Float64Array {
  const job = new Cutting(zones, space, scratch);
  job.gather();
  job.cutAll();
  return job.keepFree();
}

/** One run over one space. Pieces are known by their offset in `pieces`. */
class Cutting {
  private readonly zones: readonly Grown[];
  private readonly space: Space;
  private readonly scratch: Scratch;
  /** minX, minY, maxX, maxY of each zone, side by side. */
  private readonly boxes: Float64Array;
  /** All of the scratch memory that is in use: set once the pieces are gathered. */
  private pieces: Float64Array;
  private readonly owner: Int32Array;
  private count = 0;
  /** The convex zone that was last found to cover a sub-piece; −1 for none. */
  private taker = -1;
  /** Boxes of the zones, where there are very many. */
  private readonly index: ManyZones | null;

  constructor(zones: readonly Grown[], space: Space, scratch: Scratch) {
    this.zones = zones;
    this.space = space;
    this.scratch = scratch;
    let size = 0;
    for (const { outline } of zones) size += outline.length / STRIDE;
    if (scratch.boxes.length < zones.length * 4) scratch.boxes = new Float64Array(zones.length * 8);
    if (scratch.owner.length < size) {
      scratch.owner = new Int32Array(size * 2);
      scratch.order = new Int32Array(size * 2);
    }
    this.boxes = scratch.boxes;
    this.owner = scratch.owner;
    this.pieces = scratch.pieces.data;
    for (let z = 0; z < zones.length; z++) {
      const zone = zones[z] as Grown;
      this.boxes[4 * z] = zone.minX;
      this.boxes[4 * z + 1] = zone.minY;
      this.boxes[4 * z + 2] = zone.maxX;
      this.boxes[4 * z + 3] = zone.maxY;
    }
    this.index = zones.length > MANY_ZONES ? new ManyZones(zones) : null;
  }

  /** Takes the pieces that may bound free space: they reach into the space, and no single zone covers them. */
  gather(): void {
    const { minX, minY, maxX, maxY } = this.space.extent;
    const { pieces } = this.scratch;
    pieces.length = 0;
    for (let z = 0; z < this.zones.length; z++) {
      const { outline } = this.zones[z] as Grown;
      for (let k = 0; k < outline.length; k += STRIDE) {
        // What lies outside the space is never kept, and its crossings lie outside as well.
        if (at(outline, k + MIN_X) > maxX || at(outline, k + MAX_X) < minX) continue;
        if (at(outline, k + MIN_Y) > maxY || at(outline, k + MAX_Y) < minY) continue;
        if (isBeyond(this.space.hull, outline, k)) continue;
        if (this.index && at(outline, k + RADIUS) === 0) {
          if (!this.takeBare(this.index, outline, k, z)) continue;
        } else if (this.isCovered(outline, k, z)) continue;
        else pieces.copy(outline, k);
        this.owner[this.count++] = z;
      }
    }
    this.pieces = pieces.data;
  }

  /**
   * Whether another convex zone covers the whole piece: it holds both ends and, of an arc, the point where the tangents at
   * its ends meet, hence all that lies between. A covered piece is never kept, and where it crosses another piece that one
   * is covered as well, on both sides: neither needs a cut there.
   */
  private isCovered(p: Float64Array, k: number, own: number): boolean {
    const { boxes, zones, index } = this;
    const minX = at(p, k + MIN_X);
    const minY = at(p, k + MIN_Y);
    const maxX = at(p, k + MAX_X);
    const maxY = at(p, k + MAX_Y);
    if (index) return index.anyCovering(minX, minY, (z) => z !== own && coversPiece(zones[z] as Grown, p, k));
    for (let z = 0, b = 0; z < zones.length; z++, b += 4) {
      if (at(boxes, b) > minX || at(boxes, b + 1) > minY || at(boxes, b + 2) < maxX || at(boxes, b + 3) < maxY)
        continue;
      if (z !== own && coversPiece(zones[z] as Grown, p, k)) return true;
    }
    return false;
  }

  /**
   * Takes of a line what is left when zones that cover it one after the other from either end are left off; false where nothing is. For
   * lists of very many zones: spares the crossing of each with each where a great many walls meet.
   */
  private takeBare(index: ManyZones, p: Float64Array, k: number, own: number): boolean {
    const [x0, y0, x1, y1] = [at(p, k + X0), at(p, k + Y0), at(p, k + X1), at(p, k + Y1)];
    const from = index.heldFrom([x0, y0, x1, y1], own);
    if (from === 1) return false;
    const to = 1 - index.heldFrom([x1, y1, x0, y0], own);
    if (to <= from) return false;
    if (from === 0 && to === 1) this.scratch.pieces.copy(p, k);
    else this.scratch.pieces.line(pieceX(p, k, from), pieceY(p, k, from), pieceX(p, k, to), pieceY(p, k, to));
    return true;
  }

  /** Cuts every two pieces at their crossings. */
  cutAll(): void {
    const { pieces, owner, zones, count } = this;
    const { cuts } = this.scratch;
    cuts.clear();
    const cut = (offset: number, t: number) => cuts.add(offset / STRIDE, t);
    const order = this.orderByMinX();
    for (let m = 0; m < count; m++) {
      const i = order[m] as number;
      const right = at(pieces, i + MAX_X) + SAME_LINE;
      const low = at(pieces, i + MIN_Y) - SAME_LINE;
      const high = at(pieces, i + MAX_Y) + SAME_LINE;
      const own = owner[i / STRIDE] as number;
      const convex = (zones[own] as Grown).convex;
      for (let n = m + 1; n < count; n++) {
        const j = order[n] as number;
        if (at(pieces, j + MIN_X) > right) break;
        if (at(pieces, j + MIN_Y) > high || at(pieces, j + MAX_Y) < low) continue;
        if (convex && owner[j / STRIDE] === own) continue;
        cutPair(pieces, i, j, cut);
      }
    }
    cuts.sort(count);
  }

  /** Offsets of pieces by their left end, so that each meets only those that begin before it ends. */
  private orderByMinX(): Int32Array {
    const { pieces, count } = this;
    const order = this.scratch.order.subarray(0, count);
    for (let i = 0; i < count; i++) order[i] = i * STRIDE;
    return order.sort((i, j) => at(pieces, i + MIN_X) - at(pieces, j + MIN_X));
  }

  /** The sub-pieces that no zone covers and that lie in the space. */
  keepFree(): Float64Array {
    const { pieces } = this;
    const { kept, cuts } = this.scratch;
    kept.length = 0;
    for (let i = 0; i < this.count; i++) {
      const k = i * STRIDE;
      const length = pieceLength(pieces, k);
      const end = cuts.end(i);
      let next = cuts.start(i);
      if (next === end) {
        if (length > SHORTEST && this.isFree(k, 0, 1)) kept.copy(pieces, k);
        continue;
      }
      let from = 0;
      for (; next <= end; next++) {
        const to = next < end ? cuts.at(next) : 1;
        // A cut at nearly the same place as the one before: nothing lies between.
        if ((to - from) * length <= SHORTEST) continue;
        if (this.isFree(k, from, to)) pushSubPiece(kept, pieces, k, from, to);
        from = to;
      }
    }
    return kept.data.subarray(0, kept.length);
  }

  /** Whether the middle of a sub-piece is covered by no zone. */
  private isFree(k: number, from: number, to: number): boolean {
    const { boxes, pieces, zones } = this;
    const own = this.owner[k / STRIDE] as number;
    const middle = (from + to) / 2;
    const x = pieceX(pieces, k, middle);
    const y = pieceY(pieces, k, middle);
    // What covers one sub-piece most often covers the next.
    const last = this.taker;
    if (last >= 0 && last !== own && holds(zones[last] as Grown, x, y)) return false;
    if (this.index) {
      return !this.index.anyAt(x, y, (z) => this.takes(z, own, k, from, to, x, y)) && this.space.accepts(x, y);
    }
    for (let z = 0, b = 0; z < zones.length; z++, b += 4) {
      if (x < at(boxes, b) - SAME_LINE || x > at(boxes, b + 2) + SAME_LINE) continue;
      if (y < at(boxes, b + 1) - SAME_LINE || y > at(boxes, b + 3) + SAME_LINE) continue;
      if (this.takes(z, own, k, from, to, x, y)) return false;
    }
    return this.space.accepts(x, y);
  }

  /** Whether a zone covers the sub-piece with its middle at (x, y), or has it on its own boundary instead. */
  private takes(z: number, own: number, k: number, from: number, to: number, x: Mm, y: Mm): boolean {
    const zone = this.zones[z] as Grown;
    if (z !== own && zone.convex && holds(zone, x, y)) {
      this.taker = z;
      return true;
    }
    if (z === own) return !zone.convex && zoneDistance(zone, x, y) < -SAME_LINE;
    const spare = zoneDistance(zone, x, y);
    if (spare < -SAME_LINE) return true;
    return spare < SAME_LINE && yieldsTo(zone, z < own, this.pieces, k, from, to);
  }
}

/** Whether a convex zone holds both ends of a piece and, of an arc, the point where the tangents at its ends meet. */
function coversPiece(zone: Grown, p: Float64Array, k: number): boolean {
  if (!zone.convex) return false;
  if (!holds(zone, at(p, k + X0), at(p, k + Y0)) || !holds(zone, at(p, k + X1), at(p, k + Y1))) return false;
  return at(p, k + RADIUS) === 0 || (hasApex(p, k) && holds(zone, apexX(p, k), apexY(p, k)));
}

/** Whether a piece lies wholly outside one of the half-planes of a hull. */
function isBeyond(hull: Float64Array, p: Float64Array, k: number): boolean {
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

/** Where the tangents at the ends of an arc meet; not for nearly a half turn, where they meet too far out to tell anything. */
function hasApex(p: Float64Array, k: number): boolean {
  return at(p, k + SWEEP) < 3;
}

function apexX(p: Float64Array, k: number): Mm {
  const half = at(p, k + SWEEP) / 2;
  return at(p, k + CX) + (at(p, k + RADIUS) / Math.cos(half)) * Math.cos(at(p, k + START) + half);
}

function apexY(p: Float64Array, k: number): Mm {
  const half = at(p, k + SWEEP) / 2;
  return at(p, k + CY) + (at(p, k + RADIUS) / Math.cos(half)) * Math.sin(at(p, k + START) + half);
}

/**
 * The middle of the sub-piece lies on the boundary of another zone. If all of it does, it gives way: to a zone on its free
 * side always, to one on its own side when that comes first in the list.
 */
function yieldsTo(zone: Grown, first: boolean, p: Float64Array, k: number, from: number, to: number): boolean {
  const elsewhere = from + (to - from) * 0.3;
  const x = pieceX(p, k, elsewhere);
  const y = pieceY(p, k, elsewhere);
  if (Math.abs(zoneDistance(zone, x, y)) > SAME_LINE) return false;
  const step = 100 * SAME_LINE;
  const [nx, ny] = freeSide(p, k, elsewhere);
  // Inside a body the distance is 0, which a zone grown by nothing must count as covered.
  if (zoneDistance(zone, x + nx * step, y + ny * step) <= 0) return true;
  return first;
}

/** Unit normal towards the free side: left of the direction, counter-clockwise on screen. */
function freeSide(p: Float64Array, k: number, t: number): [number, number] {
  if (at(p, k + RADIUS) > 0) {
    const angle = at(p, k + START) + at(p, k + SWEEP) * t;
    return [Math.cos(angle), Math.sin(angle)];
  }
  const length = pieceLength(p, k);
  return [(at(p, k + Y1) - at(p, k + Y0)) / length, -(at(p, k + X1) - at(p, k + X0)) / length];
}

function pieceX(p: Float64Array, k: number, t: number): Mm {
  return at(p, k + RADIUS) > 0
    ? at(p, k + CX) + at(p, k + RADIUS) * Math.cos(at(p, k + START) + at(p, k + SWEEP) * t)
    : at(p, k + X0) + (at(p, k + X1) - at(p, k + X0)) * t;
}

function pieceY(p: Float64Array, k: number, t: number): Mm {
  return at(p, k + RADIUS) > 0
    ? at(p, k + CY) + at(p, k + RADIUS) * Math.sin(at(p, k + START) + at(p, k + SWEEP) * t)
    : at(p, k + Y0) + (at(p, k + Y1) - at(p, k + Y0)) * t;
}

/** Length of a piece of a flat array, mm. */
export function pieceLength(p: Float64Array, k: number): Mm {
  if (at(p, k + RADIUS) > 0) return at(p, k + RADIUS) * at(p, k + SWEEP);
  const dx = at(p, k + X1) - at(p, k + X0);
  const dy = at(p, k + Y1) - at(p, k + Y0);
  return Math.sqrt(dx * dx + dy * dy);
}

function pushSubPiece(out: Pieces, p: Float64Array, k: number, from: number, to: number): void {
  if (at(p, k + RADIUS) > 0) {
    const sweep = at(p, k + SWEEP);
    out.arc(at(p, k + CX), at(p, k + CY), at(p, k + RADIUS), at(p, k + START) + sweep * from, sweep * (to - from));
  } else out.line(pieceX(p, k, from), pieceY(p, k, from), pieceX(p, k, to), pieceY(p, k, to));
}

function at(p: Float64Array, i: number): number {
  return p[i] as number;
}
