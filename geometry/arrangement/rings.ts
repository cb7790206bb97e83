import { vectorLength } from '../plane/point.ts';
import type { Mm, XY } from '../plane/types.ts';
import { pieceLength } from './free-boundary.ts';
import { CX, CY, RADIUS, START, STRIDE, SWEEP, X0, X1, Y0, Y1 } from './outline.ts';
import type { ArcRing, Edge } from './types.ts';

/** Ends this near, mm, are joined when boundary parts are linked into rings. */
const JOINT = 1e-3;

/** Ends of parts that meet in one point agree to this, mm: boundaries that nearly run on one another cross at a small angle. */
const MEETING = 1e-5;

/**
 * Where boundaries touch, a part shorter than this, mm, may be left over that leads nowhere, or missing. They count as one
 * within a millionth of a mm; a line stays that near to an arc of radius 5 m for 0.2 mm about the point where they touch.
 */
const LONGEST_STRAY = 0.25;

/** A gap up to this, mm, is left: it is the width within which boundaries count as one. */
const LEAST_BRIDGE = 1e-6;

/**
 * Square mm inside linked rings, by Green's theorem in closed form, arcs included. Of the rings and not of the parts that they were
 * linked from: a hair that leads nowhere would count with its whole distance from the origin.
 */
export function ringsArea(rings: readonly ArcRing[]): number {
  let twice = 0;
  for (const ring of rings) {
    // From a point of the ring, to keep digits.
    const [ox, oy] = ring[0] ? startOf(ring[0]) : [0, 0];
    ring.forEach((edge, i) => {
      const [x0, y0] = startOf(edge);
      const [x1, y1] = startOf(ring[(i + 1) % ring.length] as Edge);
      if (edge.kind === 'arc') {
        const [cx, cy] = edge.center;
        twice += edge.radius * edge.radius * edge.sweep + (cx - ox) * (y1 - y0) - (cy - oy) * (x1 - x0);
      } else twice += (x0 - ox) * (y1 - oy) - (x1 - ox) * (y0 - oy);
    });
  }
  // A rounding that is left of nothing is nothing.
  return Math.max(0, twice / 2);
}

function startOf(edge: Edge): XY {
  if (edge.kind === 'line') return edge.from;
  return [edge.center[0] + edge.radius * Math.cos(edge.start), edge.center[1] + edge.radius * Math.sin(edge.start)];
}

/**
 * Links flat boundary parts into closed rings, turned so that what is free lies on the right (outer rings run clockwise on
 * screen). At a point where rings touch, the sharpest turn towards the free side is taken, so that rings touch but never
 * cross. Parts shorter than half a joint fall away; a line closes what gap they leave.
 */
export function linkRings(parts: Float64Array): ArcRing[] {
  const turned = withoutStrays(parts);
  const starts = new StartIndex(turned);
  const used = new Uint8Array(turned.length);
  const rings: ArcRing[] = [];
  for (let i = 0; i < turned.length; i++) {
    if (used[i]) continue;
    const ring: Edge[] = [];
    let k = i;
    do {
      const part = turned[k] as Turned;
      used[k] = 1;
      ring.push(part.edge);
      k = starts.next(part, used, i);
      if (k >= 0) ring.push(...bridge(part, turned[k] as Turned));
    } while (k >= 0 && k !== i);
    rings.push(ring);
  }
  return rings;
}

/**
 * The parts that belong to rings. Where an arc all but touches another boundary the two are one for a hair, and a sub-piece
 * of that hair may be kept although the other runs past it: it leads nowhere, and a ring that followed it would stay open.
 */
function withoutStrays(parts: Float64Array): Turned[] {
  let kept: Turned[] = [];
  let short: Turned[] = [];
  for (let k = 0; k < parts.length; k += STRIDE) {
    const length = pieceLength(parts, k);
    if (length < JOINT / 2) continue;
    const part = turnedPart(parts, k);
    kept.push(part);
    if (length < LONGEST_STRAY) short.push(part);
  }
  for (;;) {
    const strays = looseOf(short, kept);
    if (strays.size === 0) return kept;
    kept = kept.filter((part) => !strays.has(part));
    short = short.filter((part) => !strays.has(part));
  }
}

/** Those where no other part ends where they start, or none starts where they end. */
function looseOf(some: readonly Turned[], all: readonly Turned[]): Set<Turned> {
  if (some.length === 0) return new Set();
  const starts = new ByX(all, ({ x0 }) => x0);
  const ends = new ByX(all, ({ x1 }) => x1);
  const meets = (x: Mm, y: Mm, px: Mm, py: Mm) => vectorLength(x - px, y - py) <= JOINT;
  const isLoose = (part: Turned) =>
    !starts.some(part.x1, JOINT, (other) => other !== part && meets(other.x0, other.y0, part.x1, part.y1)) ||
    !ends.some(part.x0, JOINT, (other) => other !== part && meets(other.x1, other.y1, part.x0, part.y0));
  return new Set(some.filter(isLoose));
}

/** A line over the gap between two parts, so that a ring is closed for whoever counts its crossings. */
function bridge(part: Turned, next: Turned): Edge[] {
  if (vectorLength(next.x0 - part.x1, next.y0 - part.y1) <= LEAST_BRIDGE) return [];
  return [{ kind: 'line', from: [part.x1, part.y1], to: [next.x0, next.y0] }];
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

/** A part walked the other way. */
function turnedPart(parts: Float64Array, k: number): Turned {
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

/** Parts in the order of an x of theirs. */
class ByX {
  private readonly parts: readonly Turned[];
  private readonly order: Int32Array;
  private readonly xs: Float64Array;

  constructor(parts: readonly Turned[], x: (part: Turned) => Mm) {
    const at = (i: number) => x(parts[i] as Turned);
    this.parts = parts;
    this.order = Int32Array.from(parts, (_, i) => i).sort((i, j) => at(i) - at(j));
    this.xs = Float64Array.from(this.order, at);
  }

  /** Whether some part that has its x so near to this one answers; asked in order, with the place of the part in the list. */
  some(x: Mm, reach: Mm, answers: (part: Turned, place: number) => boolean): boolean {
    for (let k = this.firstFrom(x - reach); k < this.xs.length; k++) {
      if ((this.xs[k] as number) > x + reach) return false;
      const place = this.order[k] as number;
      if (answers(this.parts[place] as Turned, place)) return true;
    }
    return false;
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

/** Finds parts by where they start. */
class StartIndex {
  private readonly byStart: ByX;

  constructor(parts: readonly Turned[]) {
    this.byStart = new ByX(parts, ({ x0 }) => x0);
  }

  /**
   * The part that goes on from the end of this one: of those that start there, else within a joint, the one with the sharpest
   * turn, else the nearest within a hair. The ring's own first part closes it. −1 where none is.
   */
  next(part: Turned, used: Uint8Array, first: number): number {
    let best = -1;
    let bestTurn = Number.NEGATIVE_INFINITY;
    let bestMeets = false;
    let nearest = -1;
    let least = LONGEST_STRAY;
    this.byStart.some(part.x1, LONGEST_STRAY, (candidate, i) => {
      if (used[i] && i !== first) return false;
      const gap = vectorLength(candidate.x0 - part.x1, candidate.y0 - part.y1);
      if (gap < least) {
        least = gap;
        nearest = i;
      }
      if (gap > JOINT) return false;
      // What starts at this very point goes before what starts a hair off, on the other face of a wall without thickness.
      const meets = gap <= MEETING;
      if (bestMeets && !meets) return false;
      const turn = foldedTurn(candidate.leaves - part.arrives);
      if (meets === bestMeets && turn <= bestTurn) return false;
      bestTurn = turn;
      bestMeets = meets;
      best = i;
      return false;
    });
    return best >= 0 ? best : nearest;
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

/** Flat pieces as edges, with their zone on the right. */
export function toEdges(pieces: Float64Array): Edge[] {
  const edges: Edge[] = [];
  for (let k = 0; k < pieces.length; k += STRIDE) {
    const radius = at(pieces, k + RADIUS);
    if (radius > 0) {
      const center: XY = [at(pieces, k + CX), at(pieces, k + CY)];
      edges.push({ kind: 'arc', center, radius, start: at(pieces, k + START), sweep: at(pieces, k + SWEEP) });
    } else {
      edges.push({
        kind: 'line',
        from: [at(pieces, k + X0), at(pieces, k + Y0)],
        to: [at(pieces, k + X1), at(pieces, k + Y1)],
      });
    }
  }
  return edges;
}

/** The ring walked the other way. */
export function turnedRing(ring: ArcRing): ArcRing {
  return [...ring]
    .reverse()
    .map((edge) =>
      edge.kind === 'line'
        ? { kind: 'line', from: edge.to, to: edge.from }
        : { ...edge, start: edge.start + edge.sweep, sweep: -edge.sweep },
    );
}

function at(p: Float64Array, i: number): number {
  return p[i] as number;
}
