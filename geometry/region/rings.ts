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
  const ends = { x0: part.x1, y0: part.y1, x1: part.x0, y1: part.y0 };
  if (part.radius > 0) {
    const end = part.start + part.sweep;
    return {
      ...ends,
      edge: { kind: 'arc', center: [part.cx, part.cy], radius: part.radius, start: end, sweep: -part.sweep },
      leaves: end - Math.PI / 2,
      arrives: part.start - Math.PI / 2,
    };
  }
  const direction = Math.atan2(part.y0 - part.y1, part.x0 - part.x1);
  return {
    ...ends,
    edge: { kind: 'line', from: [part.x1, part.y1], to: [part.x0, part.y0] },
    leaves: direction,
    arrives: direction,
  };
}

/** Finds parts by where they start: a grid of joint-sized cells. */
class StartIndex {
  private readonly cells = new Map<string, number[]>();
  private readonly parts: readonly Turned[];

  constructor(parts: readonly Turned[]) {
    this.parts = parts;
    parts.forEach((part, i) => {
      const key = cellKey(Math.round(part.x0 / JOINT), Math.round(part.y0 / JOINT));
      const cell = this.cells.get(key);
      if (cell) cell.push(i);
      else this.cells.set(key, [i]);
    });
  }

  /** The part that goes on from the end of this one, or −1; the ring's own first part only when nothing else does. */
  next(part: Turned, used: Uint8Array, first: number): number {
    const cx = Math.round(part.x1 / JOINT);
    const cy = Math.round(part.y1 / JOINT);
    let best = -1;
    let bestTurn = Number.NEGATIVE_INFINITY;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const i of this.cells.get(cellKey(cx + dx, cy + dy)) ?? []) {
          const candidate = this.parts[i] as Turned;
          if (used[i] && i !== first) continue;
          if (Math.hypot(candidate.x0 - part.x1, candidate.y0 - part.y1) > JOINT) continue;
          const turn = foldedTurn(candidate.leaves - part.arrives);
          if (turn > bestTurn) {
            bestTurn = turn;
            best = i;
          }
        }
      }
    }
    return best === first ? -1 : best;
  }
}

function cellKey(x: number, y: number): string {
  return `${x},${y}`;
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
