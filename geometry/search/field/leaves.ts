import { isConvex } from '../../arrangement/outline.ts';
import type { Mm } from '../../plan/model.ts';
import type { Body } from '../../plane/body.ts';
import type { Candidates } from './candidates.ts';
import { insideWithin, planesContain, planesEnd } from './half-planes.ts';
import { hangingMargin, pieceMargin, sectorMargin, segmentDistance } from './piece-margin.ts';
import { HANGING, INSIDE, SECTOR, SEGMENT, STRIDE } from './primitives.ts';

/**
 * Length of a leaf's head: the floor of bodies that cover it, the ends of its segments, hanging pieces, streams and
 * insides of convex bodies, and whether there are others. As long as a piece, so that pieces do not straddle more
 * cache lines than necessary.
 */
const HEAD = STRIDE;

/**
 * The candidates of each leaf packed contiguously, in the order in which `margin` reads them. A leaf is packed
 * on first use.
 */
export class Leaves {
  private readonly candidates: Candidates;
  private readonly minX: Mm;
  private readonly minY: Mm;
  private readonly perLeaf: number;
  private readonly across: number;
  private readonly down: number;
  /** Offset of each leaf's head in the packed numbers; −1 if it is not packed. */
  private readonly heads: Int32Array;
  /** The insides of non-convex bodies, per leaf. */
  private readonly nonConvex = new Map<number, readonly number[]>();
  /** Per limit 1 for a convex body, 2 for a non-convex one, 0 if not determined yet. */
  private readonly forms: Uint8Array;
  private flat = new Float64Array(4096);
  private used = 0;

  constructor(candidates: Candidates) {
    const { minX, minY, leaf, across, down } = candidates;
    this.candidates = candidates;
    this.minX = minX;
    this.minY = minY;
    this.perLeaf = 1 / leaf;
    this.across = across;
    this.down = down;
    this.forms = new Uint8Array(candidates.primitives.subjects.length);
    this.heads = new Int32Array(across * down).fill(-1);
  }

  /** Returns the least margin at a point, mm; by a linear scan outside the grid. */
  margin(x: Mm, y: Mm): Mm {
    const i = Math.floor((x - this.minX) * this.perLeaf);
    const j = Math.floor((y - this.minY) * this.perLeaf);
    if (!(i >= 0 && j >= 0 && i < this.across && j < this.down)) return this.leastOfAll(x, y);
    const leaf = j * this.across + i;
    let head = this.heads[leaf] as number;
    if (head < 0) head = this.pack(leaf, i, j);
    const { flat } = this;
    let least = flat[head] as number;
    let k = head + HEAD;
    for (const end = flat[head + 1] as number; k < end; k += STRIDE) {
      const dx = flat[k + 2] as number;
      const dy = flat[k + 3] as number;
      const px = x - (flat[k] as number);
      const py = y - (flat[k + 1] as number);
      const along = (px * dx + py * dy) * (flat[k + 4] as number);
      const t = along < 0 ? 0 : Math.min(1, along);
      const ex = px - t * dx;
      const ey = py - t * dy;
      const square = ex * ex + ey * ey;
      const offset = flat[k + 5] as number;
      // Compares squared distances and takes the square root only for a new minimum.
      const near = least + offset;
      if (near <= 0 || square >= near * near) continue;
      const margin = Math.max(flat[k + 6] as number, Math.sqrt(square) - offset);
      if (margin < least) least = margin;
    }
    for (const end = flat[head + 2] as number; k < end; k += STRIDE) {
      if ((flat[k + 6] as number) >= least) continue;
      least = Math.min(least, hangingMargin(flat, k, segmentDistance(flat, k, x, y)));
    }
    for (const end = flat[head + 3] as number; k < end; k += STRIDE) {
      least = Math.min(least, sectorMargin(flat, k, x, y));
    }
    for (const end = flat[head + 4] as number; k < end; k = planesEnd(flat, k + 1)) {
      if ((flat[k] as number) < least && planesContain(flat, k + 1, x, y)) least = flat[k] as number;
    }
    return flat[head + 5] === 0 ? least : Math.min(least, this.leastOfDented(leaf, x, y));
  }

  private leastOfDented(leaf: number, x: Mm, y: Mm): Mm {
    let least = Number.POSITIVE_INFINITY;
    for (const piece of this.nonConvex.get(leaf) ?? []) {
      least = Math.min(least, pieceMargin(this.candidates.primitives, piece, x, y));
    }
    return least;
  }

  private leastOfAll(x: Mm, y: Mm): Mm {
    const { primitives } = this.candidates;
    let least = Number.POSITIVE_INFINITY;
    for (let piece = 0; piece < primitives.count; piece++) {
      least = Math.min(least, pieceMargin(primitives, piece, x, y));
    }
    return least;
  }

  /** Packs a leaf and returns the offset of its head. */
  private pack(leaf: number, i: number, j: number): number {
    const square = this.candidates.pruneLeaf(i, j);
    this.used += (STRIDE - (this.used % STRIDE)) % STRIDE;
    const head = this.used;
    this.reserve(HEAD);
    this.used += HEAD;
    const ends = [SEGMENT, HANGING, SECTOR].map((kind) => this.packKind(square, kind));
    const [floor, nonConvex] = this.packInsides(square, i, j);
    this.flat.set([floor, ...ends, this.used, nonConvex.length], head);
    if (nonConvex.length > 0) this.nonConvex.set(leaf, nonConvex);
    this.heads[leaf] = head;
    return head;
  }

  private packKind(square: number, wanted: number): number {
    const { pool, starts, ends, primitives } = this.candidates;
    const { kind, data } = primitives;
    const [start, end] = [starts[square] as number, ends[square] as number];
    this.reserve((end - start) * STRIDE);
    const { flat } = this;
    let used = this.used;
    for (let n = start; n < end; n++) {
      const piece = pool[n] as number;
      if (kind[piece] !== wanted) continue;
      for (let m = 0; m < STRIDE; m++) flat[used++] = data[piece * STRIDE + m] as number;
    }
    this.used = used;
    return used;
  }

  /**
   * Packs the insides of convex bodies; returns the floor of those that contain the whole leaf, and the non-convex
   * bodies.
   */
  private packInsides(square: number, i: number, j: number): [floor: Mm, nonConvex: number[]] {
    const { pool, starts, ends, primitives, leaf } = this.candidates;
    const { kind, data, owner, bodies } = primitives;
    const half = leaf / 2;
    const [x, y] = [this.minX + (2 * i + 1) * half, this.minY + (2 * j + 1) * half];
    const nonConvex: number[] = [];
    let least = Number.POSITIVE_INFINITY;
    for (let n = starts[square] as number; n < (ends[square] as number); n++) {
      const piece = pool[n] as number;
      const body = bodies[owner[piece] as number];
      if (kind[piece] !== INSIDE || body?.kind !== 'ring') continue;
      const floor = data[piece * STRIDE + 6] as number;
      const planes = this.isConvex(owner[piece] as number, body) ? insideWithin(body.flat, x, y, half) : [];
      if (planes?.length === 0) nonConvex.push(piece);
      else if (planes?.length === 1) least = Math.min(least, floor);
      else if (planes) this.packNumbers([floor, ...planes]);
    }
    return [least, nonConvex];
  }

  private isConvex(owner: number, body: Body): boolean {
    if (this.forms[owner] === 0) this.forms[owner] = isConvex(body) ? 1 : 2;
    return this.forms[owner] === 1;
  }

  private packNumbers(numbers: readonly number[]): void {
    this.reserve(numbers.length);
    for (const number of numbers) this.flat[this.used++] = number;
  }

  private reserve(count: number): void {
    if (this.used + count <= this.flat.length) return;
    const larger = new Float64Array(this.flat.length * 2 + count);
    larger.set(this.flat);
    this.flat = larger;
  }
}
