import type { Mm, XY } from '../plan/model.ts';
import type { Piece } from './outline.ts';
import type { ArcRing, Edge } from './types.ts';

/** Ends this near, mm, are joined when boundary parts are linked into rings. */
const JOINT = 1e-3;

/**
 * Square mm inside boundary parts that have the free side on their left, by Green's theorem in closed form: the parts need
 * not be in order, only complete. Measured from (ox, oy), a point nearby, to keep digits.
 */
export function freeArea(parts: readonly Piece[], ox: Mm, oy: Mm): number {
  let twice = 0;
  for (const part of parts) {
    if (part.radius > 0) {
      twice += part.radius * part.radius * part.sweep;
      twice += (part.cx - ox) * (part.y1 - part.y0) - (part.cy - oy) * (part.x1 - part.x0);
    } else {
      twice += (part.x0 - ox) * (part.y1 - oy) - (part.x1 - ox) * (part.y0 - oy);
    }
  }
  // A rounding that is left of nothing is nothing.
  return Math.max(0, -twice / 2);
}

/**
 * Links boundary parts into closed rings, turned so that what is free lies on the right (outer rings run clockwise on
 * screen). At a point where rings touch, the sharpest turn towards the free side is taken, so that rings touch but never
 * cross. Parts shorter than a joint fall away.
 */
export function linkRings(parts: readonly Piece[]): ArcRing[] {
  const turned = parts.filter((part) => !isDust(part)).map(reversed);
  const starts = new StartIndex(turned);
  const used = new Uint8Array(turned.length);
  const rings: ArcRing[] = [];
  for (let i = 0; i < turned.length; i++) {
    if (used[i]) continue;
    const ring: Edge[] = [];
    let k = i;
    while (k >= 0 && !used[k]) {
      used[k] = 1;
      ring.push((turned[k] as Turned).edge);
      k = starts.next(turned[k] as Turned, used, i);
    }
    rings.push(ring);
  }
  return rings;
}

interface Turned {
  readonly edge: Edge;
  readonly x0: Mm;
  readonly y0: Mm;
  readonly x1: Mm;
  readonly y1: Mm;
  /** Directions of travel at both ends, radians. */
  readonly leaves: number;
  readonly arrives: number;
}

function isDust(part: Piece): boolean {
  const length = part.radius > 0 ? part.radius * part.sweep : Math.hypot(part.x1 - part.x0, part.y1 - part.y0);
  return length < JOINT / 2;
}

function reversed(part: Piece): Turned {
  const { x0, y0, x1, y1, radius, start, sweep } = part;
  if (radius > 0) {
    const end = start + sweep;
    const edge: Edge = { kind: 'arc', center: [part.cx, part.cy], radius, start: end, sweep: -sweep };
    return { edge, x0: x1, y0: y1, x1: x0, y1: y0, leaves: end - Math.PI / 2, arrives: start - Math.PI / 2 };
  }
  const direction = Math.atan2(y0 - y1, x0 - x1);
  const edge: Edge = { kind: 'line', from: [x1, y1], to: [x0, y0] };
  return { edge, x0: x1, y0: y1, x1: x0, y1: y0, leaves: direction, arrives: direction };
}

/** Finds parts by where they start: sorted by x. */
class StartIndex {
  private readonly parts: readonly Turned[];
  private readonly order: Int32Array;
  private readonly xs: Float64Array;

  constructor(parts: readonly Turned[]) {
    this.parts = parts;
    this.order = Int32Array.from(parts, (_, i) => i).sort((i, j) => (parts[i] as Turned).x0 - (parts[j] as Turned).x0);
    this.xs = Float64Array.from(this.order, (i) => (parts[i] as Turned).x0);
  }

  /** The part that goes on from the end of this one, or −1; the ring's own first part only when nothing else does. */
  next(part: Turned, used: Uint8Array, first: number): number {
    let best = -1;
    let bestTurn = Number.NEGATIVE_INFINITY;
    for (let k = this.firstFrom(part.x1 - JOINT); k < this.xs.length; k++) {
      if ((this.xs[k] as number) > part.x1 + JOINT) break;
      const i = this.order[k] as number;
      if (used[i] && i !== first) continue;
      const candidate = this.parts[i] as Turned;
      if (Math.hypot(candidate.x0 - part.x1, candidate.y0 - part.y1) > JOINT) continue;
      const turn = foldedTurn(candidate.leaves - part.arrives);
      if (turn <= bestTurn) continue;
      bestTurn = turn;
      best = i;
    }
    return best === first ? -1 : best;
  }

  /** The first place in the order whose x is at least this. */
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

/** A turn in −π…π, clockwise on screen positive: towards the free side, which lies on the right. */
function foldedTurn(turn: number): number {
  const folded = turn % (2 * Math.PI);
  if (folded > Math.PI) return folded - 2 * Math.PI;
  return folded <= -Math.PI ? folded + 2 * Math.PI : folded;
}

/** The points where a ring's edges start, for rings of straight edges. */
export function straightRing(ring: ArcRing): XY[] {
  return ring.map((edge) => {
    if (edge.kind === 'arc') throw new Error('a ring of wall faces holds an arc');
    return edge.from;
  });
}
