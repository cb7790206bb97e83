import type { Mm } from '../plane/types.ts';
import { cutPair } from './crossings.ts';
import { Cuts } from './cuts.ts';
import {
  at,
  isBeyond,
  MAX_X,
  MAX_Y,
  MIN_X,
  MIN_Y,
  Pieces,
  pieceLength,
  pieceX,
  pieceY,
  pushSubPiece,
  RADIUS,
  SHORTEST_PIECE,
  STRIDE,
  X0,
  X1,
  Y0,
  Y1,
} from './pieces.ts';
import type { Space } from './space.ts';
import { COINCIDENT, containsStrictly, coversPiece, type GrownZone, isShadowedBy, zoneDistance } from './zone.ts';
import { INDEX_THRESHOLD, ZoneIndex } from './zone-index.ts';

/** Buffers for `freeBoundary`, reused between calls because allocation would dominate the time of a call. */
export class Scratch {
  readonly pieces = new Pieces(0);
  readonly free = new Pieces(0);
  readonly cuts = new Cuts();
  owner = new Int32Array(0);
  order = new Int32Array(0);
  boxes = new Float64Array(0);
}

/**
 * Returns the parts of the zones' boundaries that no zone covers, that is, the boundary of the free area, as flat
 * pieces with the zones on their right and the free side on their left. The result is a view of the scratch buffers
 * and is overwritten by the next call that uses them.
 *
 * Where boundaries coincide with their zones on the same side, one of them is returned; with the zones on opposite
 * sides none, because nothing between them is free.
 *
 * Sweep over the pieces sorted by left end for the cuts, then a point-in-zone test for the middle of each sub-piece.
 */
export function freeBoundary(zones: readonly GrownZone[], space: Space, scratch = new Scratch()): Float64Array {
  const builder = new BoundaryBuilder(zones, space, scratch);
  builder.gather();
  builder.cutAll();
  return builder.collectFree();
}

/** The state of one call. Pieces are identified by their offset in `pieces`. */
class BoundaryBuilder {
  private readonly zones: readonly GrownZone[];
  private readonly space: Space;
  private readonly scratch: Scratch;
  /** minX, minY, maxX, maxY of each zone. */
  private readonly boxes: Float64Array;
  /** The scratch buffer; set after `gather`, because gathering may reallocate it. */
  private pieces: Float64Array;
  private readonly owner: Int32Array;
  private count = 0;
  /** The convex zone that covered the last sub-piece; −1 for none. */
  private lastCovering = -1;
  /** Spatial index of the zones; null when there are few. */
  private readonly index: ZoneIndex | null;

  constructor(zones: readonly GrownZone[], space: Space, scratch: Scratch) {
    this.zones = zones;
    this.space = space;
    this.scratch = scratch;
    let size = 0;
    for (const { start, end } of zones) size += (end - start) / STRIDE;
    if (scratch.boxes.length < zones.length * 4) scratch.boxes = new Float64Array(zones.length * 8);
    if (scratch.owner.length < size) {
      scratch.owner = new Int32Array(size * 2);
      scratch.order = new Int32Array(size * 2);
    }
    this.boxes = scratch.boxes;
    this.owner = scratch.owner;
    this.pieces = scratch.pieces.data;
    for (let z = 0; z < zones.length; z++) {
      const zone = zones[z] as GrownZone;
      this.boxes[4 * z] = zone.minX;
      this.boxes[4 * z + 1] = zone.minY;
      this.boxes[4 * z + 2] = zone.maxX;
      this.boxes[4 * z + 3] = zone.maxY;
    }
    this.index = zones.length > INDEX_THRESHOLD ? new ZoneIndex(zones) : null;
  }

  /** Collects the pieces that may bound free area: those that reach into the space and are not covered by one zone. */
  gather(): void {
    const { minX, minY, maxX, maxY } = this.space.extent;
    const { pieces } = this.scratch;
    pieces.length = 0;
    for (let z = 0; z < this.zones.length; z++) {
      const { outline, start, end } = this.zones[z] as GrownZone;
      for (let k = start; k < end; k += STRIDE) {
        // Pieces outside the space are not needed, nor are their crossings.
        if (at(outline, k + MIN_X) > maxX || at(outline, k + MAX_X) < minX) continue;
        if (at(outline, k + MIN_Y) > maxY || at(outline, k + MAX_Y) < minY) continue;
        if (isBeyond(this.space.hull, outline, k)) continue;
        if (this.index && at(outline, k + RADIUS) === 0) {
          if (!this.addUncovered(this.index, outline, k, z)) continue;
        } else if (this.isCovered(outline, k, z)) continue;
        else pieces.copy(outline, k);
        this.owner[this.count++] = z;
      }
    }
    this.pieces = pieces.data;
  }

  /**
   * Returns whether another convex zone covers the whole piece, because it contains both ends and, for an arc, the
   * intersection of the tangents at its ends. A covered piece bounds no free area, and where it crosses another
   * piece, that one is covered too, on both sides: neither needs a cut there.
   */
  private isCovered(p: Float64Array, k: number, own: number): boolean {
    const { boxes, zones, index } = this;
    const minX = at(p, k + MIN_X);
    const minY = at(p, k + MIN_Y);
    const maxX = at(p, k + MAX_X);
    const maxY = at(p, k + MAX_Y);
    if (index) return index.someCovering(minX, minY, (z) => z !== own && coversPiece(zones[z] as GrownZone, p, k));
    for (let z = 0, b = 0; z < zones.length; z++, b += 4) {
      if (at(boxes, b) > minX || at(boxes, b + 1) > minY || at(boxes, b + 2) < maxX || at(boxes, b + 3) < maxY)
        continue;
      if (z !== own && coversPiece(zones[z] as GrownZone, p, k)) return true;
    }
    return false;
  }

  /**
   * Adds the part of a line that remains when the zones covering it from either end are cut off; returns false when
   * nothing remains.
   * Used with the index: avoids quadratic crossings where very many walls meet.
   */
  private addUncovered(index: ZoneIndex, p: Float64Array, k: number, own: number): boolean {
    const [x0, y0, x1, y1] = [at(p, k + X0), at(p, k + Y0), at(p, k + X1), at(p, k + Y1)];
    const from = index.coveredFraction([x0, y0, x1, y1], own);
    if (from === 1) return false;
    const to = 1 - index.coveredFraction([x1, y1, x0, y0], own);
    if (to <= from) return false;
    if (from === 0 && to === 1) this.scratch.pieces.copy(p, k);
    else this.scratch.pieces.line(pieceX(p, k, from), pieceY(p, k, from), pieceX(p, k, to), pieceY(p, k, to));
    return true;
  }

  /** Computes the cuts of every pair of pieces. */
  cutAll(): void {
    const { pieces, owner, zones, count } = this;
    const { cuts } = this.scratch;
    cuts.clear();
    const cut = (offset: number, t: number) => cuts.add(offset / STRIDE, t);
    const order = this.orderByMinX();
    for (let m = 0; m < count; m++) {
      const i = order[m] as number;
      const right = at(pieces, i + MAX_X) + COINCIDENT;
      const low = at(pieces, i + MIN_Y) - COINCIDENT;
      const high = at(pieces, i + MAX_Y) + COINCIDENT;
      const own = owner[i / STRIDE] as number;
      const convex = (zones[own] as GrownZone).convex;
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

  /** Returns the offsets of the pieces sorted by left end, for the sweep. */
  private orderByMinX(): Int32Array {
    const { pieces, count } = this;
    const order = this.scratch.order.subarray(0, count);
    for (let i = 0; i < count; i++) order[i] = i * STRIDE;
    return order.sort((i, j) => at(pieces, i + MIN_X) - at(pieces, j + MIN_X));
  }

  /** Returns the sub-pieces that lie in the space and are covered by no zone. */
  collectFree(): Float64Array {
    const { pieces } = this;
    const { free, cuts } = this.scratch;
    free.length = 0;
    for (let i = 0; i < this.count; i++) {
      const k = i * STRIDE;
      const length = pieceLength(pieces, k);
      const end = cuts.end(i);
      let next = cuts.start(i);
      if (next === end) {
        if (length > SHORTEST_PIECE && this.isFree(k, 0, 1)) free.copy(pieces, k);
        continue;
      }
      let from = 0;
      for (; next <= end; next++) {
        const to = next < end ? cuts.at(next) : 1;
        // A cut at almost the same place as the previous one.
        if ((to - from) * length <= SHORTEST_PIECE) continue;
        if (this.isFree(k, from, to)) pushSubPiece(free, pieces, k, from, to);
        from = to;
      }
    }
    return free.data.subarray(0, free.length);
  }

  /** Returns whether no zone covers the middle of a sub-piece. */
  private isFree(k: number, from: number, to: number): boolean {
    const { boxes, pieces, zones } = this;
    const own = this.owner[k / STRIDE] as number;
    const middle = (from + to) / 2;
    const x = pieceX(pieces, k, middle);
    const y = pieceY(pieces, k, middle);
    // The zone that covered the last sub-piece most often covers the next.
    const last = this.lastCovering;
    if (last >= 0 && last !== own && containsStrictly(zones[last] as GrownZone, x, y)) return false;
    if (this.index) {
      return !this.index.someAt(x, y, (z) => this.covers(z, own, k, from, to, x, y)) && this.space.accepts(x, y);
    }
    for (let z = 0, b = 0; z < zones.length; z++, b += 4) {
      if (x < at(boxes, b) - COINCIDENT || x > at(boxes, b + 2) + COINCIDENT) continue;
      if (y < at(boxes, b + 1) - COINCIDENT || y > at(boxes, b + 3) + COINCIDENT) continue;
      if (this.covers(z, own, k, from, to, x, y)) return false;
    }
    return this.space.accepts(x, y);
  }

  /**
   * Returns whether a zone covers the sub-piece with its middle at (x, y), or takes precedence on a shared boundary.
   */
  private covers(z: number, own: number, k: number, from: number, to: number, x: Mm, y: Mm): boolean {
    const zone = this.zones[z] as GrownZone;
    if (z !== own && zone.convex && containsStrictly(zone, x, y)) {
      this.lastCovering = z;
      return true;
    }
    if (z === own) return !zone.convex && zoneDistance(zone, x, y) < -COINCIDENT;
    const spare = zoneDistance(zone, x, y);
    if (spare < -COINCIDENT) return true;
    return spare < COINCIDENT && isShadowedBy(zone, z < own, this.pieces, k, from, to);
  }
}
