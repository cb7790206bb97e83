import { vectorLength } from '../plane/point.ts';
import type { Mm, XY } from '../plane/types.ts';
import { at, CX, CY, pieceLength, RADIUS, START, STRIDE, SWEEP, X0, X1, Y0, Y1 } from './pieces.ts';
import type { ArcRing, Edge } from './types.ts';

/** Ends within this distance are joined when parts are linked into rings, mm. */
const LINK_TOLERANCE = 1e-3;

/**
 * Ends within this distance are the same point, mm: boundaries that nearly coincide cross at a small angle and lose
 * precision.
 */
const SAME_POINT = 1e-5;

/**
 * Where boundaries touch, a part shorter than this, mm, may be left over as a dangle or be missing. Boundaries count
 * as coincident within 1e-6 mm; a line stays that close to an arc of radius 5 m for 0.2 mm around the point of
 * tangency.
 */
const LONGEST_DANGLE = 0.25;

/** A gap up to this is not bridged, mm: the width within which boundaries coincide. */
const LARGEST_GAP = 1e-6;

/**
 * Returns closed rings linked from flat boundary parts, reversed so that the free area lies on the right (outer rings
 * run clockwise on screen). Where rings touch, the sharpest turn toward the free side is taken, so that rings touch
 * but do not cross. Parts shorter than half the link tolerance are dropped, and the gap is bridged by a line.
 */
export function linkRings(parts: Float64Array): ArcRing[] {
  const reversed = withoutDangles(parts);
  const starts = new StartIndex(reversed);
  const used = new Uint8Array(reversed.length);
  const rings: ArcRing[] = [];
  for (let i = 0; i < reversed.length; i++) {
    if (used[i]) continue;
    const ring: Edge[] = [];
    let k = i;
    do {
      const part = reversed[k] as Part;
      used[k] = 1;
      ring.push(part.edge);
      k = starts.next(part, used, i);
      if (k >= 0) ring.push(...bridge(part, reversed[k] as Part));
    } while (k >= 0 && k !== i);
    rings.push(ring);
  }
  return rings;
}

/**
 * Returns the parts without dangles. Where an arc is nearly tangent to another boundary, the two coincide over a
 * short stretch, and a sub-piece of it may remain although the other boundary continues: a dangle, and a ring that
 * followed it would stay open.
 */
function withoutDangles(parts: Float64Array): Part[] {
  let remaining: Part[] = [];
  let short: Part[] = [];
  for (let k = 0; k < parts.length; k += STRIDE) {
    const length = pieceLength(parts, k);
    if (length < LINK_TOLERANCE / 2) continue;
    const part = reversedPart(parts, k);
    remaining.push(part);
    if (length < LONGEST_DANGLE) short.push(part);
  }
  for (;;) {
    const dangles = danglesOf(short, remaining);
    if (dangles.size === 0) return remaining;
    remaining = remaining.filter((part) => !dangles.has(part));
    short = short.filter((part) => !dangles.has(part));
  }
}

/** Returns the parts whose start meets no other part's end, or whose end meets no other part's start. */
function danglesOf(some: readonly Part[], all: readonly Part[]): Set<Part> {
  if (some.length === 0) return new Set();
  const starts = new SortedByX(all, ({ x0 }) => x0);
  const ends = new SortedByX(all, ({ x1 }) => x1);
  const meets = (x: Mm, y: Mm, px: Mm, py: Mm) => vectorLength(x - px, y - py) <= LINK_TOLERANCE;
  const isDangle = (part: Part) =>
    !starts.some(part.x1, LINK_TOLERANCE, (other) => other !== part && meets(other.x0, other.y0, part.x1, part.y1)) ||
    !ends.some(part.x0, LINK_TOLERANCE, (other) => other !== part && meets(other.x1, other.y1, part.x0, part.y0));
  return new Set(some.filter(isDangle));
}

/** Returns a line across the gap between two parts, if any, so that crossing counts of the ring are right. */
function bridge(part: Part, next: Part): Edge[] {
  if (vectorLength(next.x0 - part.x1, next.y0 - part.y1) <= LARGEST_GAP) return [];
  return [{ kind: 'line', from: [part.x1, part.y1], to: [next.x0, next.y0] }];
}

interface Part {
  readonly edge: Edge;
  readonly x0: Mm;
  readonly y0: Mm;
  readonly x1: Mm;
  readonly y1: Mm;
  /** Directions of travel at both ends, radians. */
  readonly leaves: number;
  readonly arrives: number;
}

/** Returns a part in reversed direction. */
function reversedPart(parts: Float64Array, k: number): Part {
  const x0 = at(parts, k + X1);
  const y0 = at(parts, k + Y1);
  const x1 = at(parts, k + X0);
  const y1 = at(parts, k + Y0);
  const radius = at(parts, k + RADIUS);
  if (radius > 0) {
    const start = at(parts, k + START);
    const sweep = at(parts, k + SWEEP);
    const end = start + sweep;
    const center: XY = [at(parts, k + CX), at(parts, k + CY)];
    const edge: Edge = { kind: 'arc', center, radius, start: end, sweep: -sweep };
    return { edge, x0, y0, x1, y1, leaves: end - Math.PI / 2, arrives: start - Math.PI / 2 };
  }
  const direction = Math.atan2(y1 - y0, x1 - x0);
  return {
    edge: { kind: 'line', from: [x0, y0], to: [x1, y1] },
    x0,
    y0,
    x1,
    y1,
    leaves: direction,
    arrives: direction,
  };
}

/** Parts sorted by an x coordinate. */
class SortedByX {
  private readonly parts: readonly Part[];
  private readonly order: Int32Array;
  private readonly xs: Float64Array;

  constructor(parts: readonly Part[], x: (part: Part) => Mm) {
    const at = (i: number) => x(parts[i] as Part);
    this.parts = parts;
    this.order = Int32Array.from(parts, (_, i) => i).sort((i, j) => at(i) - at(j));
    this.xs = Float64Array.from(this.order, at);
  }

  /**
   * Returns whether the predicate holds for a part with its x within reach. It is called in order of x, with the index
   * of the part.
   */
  some(x: Mm, reach: Mm, predicate: (part: Part, place: number) => boolean): boolean {
    for (let k = this.firstFrom(x - reach); k < this.xs.length; k++) {
      if ((this.xs[k] as number) > x + reach) return false;
      const place = this.order[k] as number;
      if (predicate(this.parts[place] as Part, place)) return true;
    }
    return false;
  }

  /** Binary search for the first index whose x is at least this. */
  private firstFrom(x: Mm): number {
    let low = 0;
    let high = this.xs.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.xs[middle] as number) < x) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** Looks parts up by their start. */
class StartIndex {
  private readonly byStart: SortedByX;

  constructor(parts: readonly Part[]) {
    this.byStart = new SortedByX(parts, ({ x0 }) => x0);
  }

  /**
   * Returns the part that continues from the end of this one: among those that start within the link tolerance the
   * one with the sharpest turn, else the nearest that starts within `LONGEST_DANGLE`. The ring's own first part
   * closes it. −1 for none.
   */
  next(part: Part, used: Uint8Array, first: number): number {
    let best = -1;
    let bestTurn = Number.NEGATIVE_INFINITY;
    let bestMeets = false;
    let nearest = -1;
    let least = LONGEST_DANGLE;
    this.byStart.some(part.x1, LONGEST_DANGLE, (candidate, i) => {
      if (used[i] && i !== first) return false;
      const gap = vectorLength(candidate.x0 - part.x1, candidate.y0 - part.y1);
      if (gap < least) {
        least = gap;
        nearest = i;
      }
      if (gap > LINK_TOLERANCE) return false;
      // A part that starts at this very point takes precedence over one on the other face of a wall without thickness.
      const meets = gap <= SAME_POINT;
      if (bestMeets && !meets) return false;
      const turn = normalizedTurn(candidate.leaves - part.arrives);
      if (meets === bestMeets && turn <= bestTurn) return false;
      bestTurn = turn;
      bestMeets = meets;
      best = i;
      return false;
    });
    return best >= 0 ? best : nearest;
  }
}

/** Returns an angle normalized to −π…π, clockwise on screen positive: toward the free side on the right. */
function normalizedTurn(turn: number): number {
  const folded = turn % (2 * Math.PI);
  if (folded > Math.PI) return folded - 2 * Math.PI;
  return folded <= -Math.PI ? folded + 2 * Math.PI : folded;
}
