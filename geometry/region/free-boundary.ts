import { type Body, bodyDistance, type Extent } from '../body.ts';
import type { Mm } from '../plan/model.ts';
import { cutPair } from './crossings.ts';
import { arcPiece, grownOutline, isConvex, linePiece, type Piece } from './outline.ts';

/** A body with the distance that the axis keeps from it, ready for cutting. */
export interface Grown {
  readonly body: Body;
  readonly grow: Mm;
  readonly pieces: readonly Piece[];
  readonly convex: boolean;
  readonly minX: Mm;
  readonly minY: Mm;
  readonly maxX: Mm;
  readonly maxY: Mm;
}

/**
 * Boundaries that lie within this of each other, mm, are one boundary. Coordinates of a house carry about 1e-10 mm of
 * rounding; nothing that a tape can tell is anywhere near.
 */
const SAME_LINE = 1e-6;

const EVERYWHERE: Extent = {
  minX: Number.NEGATIVE_INFINITY,
  minY: Number.NEGATIVE_INFINITY,
  maxX: Number.POSITIVE_INFINITY,
  maxY: Number.POSITIVE_INFINITY,
};

/** A sub-piece below this, mm, is rounding. */
const SHORTEST = 1e-9;

const cache = new WeakMap<Body, Grown[]>();

/** A body grown by `grow` mm. The same body and length give the same object, so that what has not changed is not built anew. */
export function grown(body: Body, grow: Mm): Grown {
  let known = cache.get(body);
  if (!known) {
    known = [];
    cache.set(body, known);
  }
  const found = known.find((one) => one.grow === grow);
  if (found) return found;
  const made = buildGrown(body, grow);
  known.push(made);
  // A slider passes many lengths; only the last few are worth keeping.
  if (known.length > 4) known.shift();
  return made;
}

function buildGrown(body: Body, grow: Mm): Grown {
  return {
    body,
    grow,
    pieces: grownOutline(body, grow, -1),
    convex: isConvex(body),
    minX: body.extent.minX - grow,
    minY: body.extent.minY - grow,
    maxX: body.extent.maxX + grow,
    maxY: body.extent.maxY + grow,
  };
}

/**
 * The parts of the zones' boundaries that no zone covers: the boundary of what is free, each part with the zones on its
 * right and the free side on its left. `accepts` says whether a point belongs to the space in question (a room).
 *
 * Where boundaries run on one another with their zones on the same side one part is kept, with their zones on opposite
 * sides none: nothing is free between them. `within` holds all points that `accepts` accepts.
 */
export function freeBoundary(
  zones: readonly Grown[],
  accepts: (x: Mm, y: Mm) => boolean,
  within: Extent = EVERYWHERE,
): Piece[] {
  const pieces: Piece[] = [];
  const owner: number[] = [];
  zones.forEach((zone, z) => {
    for (const piece of zone.pieces) {
      // What lies outside the space in question is never kept, and its crossings lie outside as well.
      if (piece.minX > within.maxX || piece.maxX < within.minX) continue;
      if (piece.minY > within.maxY || piece.maxY < within.minY) continue;
      if (isCovered(piece, zones, z)) continue;
      pieces.push(piece);
      owner.push(z);
    }
  });
  const cuts = cutAll(zones, pieces, owner);
  const kept: Piece[] = [];
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i] as Piece;
    const stops = cuts[i];
    if (stops) stops.sort((a, b) => a - b);
    let from = 0;
    const count = stops ? stops.length : 0;
    for (let k = 0; k <= count; k++) {
      const to = k < count ? ((stops as number[])[k] as number) : 1;
      const length = (to - from) * pieceLength(piece);
      if (length <= SHORTEST) continue;
      if (isFree(zones, owner[i] as number, piece, from, to, accepts)) {
        kept.push(from === 0 && to === 1 ? piece : subPiece(piece, from, to));
      }
      from = to;
    }
  }
  return kept;
}

/**
 * Whether another convex zone covers the whole piece: it holds both ends and, of an arc, the point where the tangents at
 * its ends meet, hence all that lies between. A covered piece is never kept, and where it crosses another piece that one
 * is covered as well, on both sides: neither needs a cut there.
 */
function isCovered(piece: Piece, zones: readonly Grown[], own: number): boolean {
  for (let z = 0; z < zones.length; z++) {
    const zone = zones[z] as Grown;
    if (zone.minX > piece.minX || zone.maxX < piece.maxX || zone.minY > piece.minY || zone.maxY < piece.maxY) continue;
    if (z === own || !zone.convex) continue;
    if (!holds(zone, piece.x0, piece.y0) || !holds(zone, piece.x1, piece.y1)) continue;
    if (piece.radius === 0) return true;
    // Nearly a half turn: the tangents meet too far out to tell.
    if (piece.sweep > 3) continue;
    const reach = piece.radius / Math.cos(piece.sweep / 2);
    const angle = piece.start + piece.sweep / 2;
    if (holds(zone, piece.cx + reach * Math.cos(angle), piece.cy + reach * Math.sin(angle))) return true;
  }
  return false;
}

/** Whether a point lies inside a zone, clear of its boundary. */
function holds(zone: Grown, x: Mm, y: Mm): boolean {
  return bodyDistance(zone.body, x, y) < zone.grow - SAME_LINE;
}

function cutAll(zones: readonly Grown[], pieces: readonly Piece[], owner: readonly number[]): (number[] | undefined)[] {
  const cuts: (number[] | undefined)[] = new Array(pieces.length);
  const cut = (i: number, t: number) => {
    const list = cuts[i];
    if (list) list.push(t);
    else cuts[i] = [t];
  };
  const order = pieces.map((_, i) => i).sort((i, j) => (pieces[i] as Piece).minX - (pieces[j] as Piece).minX);
  for (let m = 0; m < order.length; m++) {
    const i = order[m] as number;
    const p = pieces[i] as Piece;
    for (let n = m + 1; n < order.length; n++) {
      const j = order[n] as number;
      const q = pieces[j] as Piece;
      if (q.minX > p.maxX + SAME_LINE) break;
      if (q.minY > p.maxY + SAME_LINE || q.maxY < p.minY - SAME_LINE) continue;
      if (owner[i] === owner[j] && (zones[owner[i] as number] as Grown).convex) continue;
      cutPair(p, q, i, j, cut);
    }
  }
  return cuts;
}

/** Whether the middle of a sub-piece is covered by no zone. */
function isFree(
  zones: readonly Grown[],
  own: number,
  piece: Piece,
  from: number,
  to: number,
  accepts: (x: Mm, y: Mm) => boolean,
): boolean {
  const middle = (from + to) / 2;
  const x = pieceX(piece, middle);
  const y = pieceY(piece, middle);
  for (let z = 0; z < zones.length; z++) {
    const zone = zones[z] as Grown;
    if (x < zone.minX - SAME_LINE || x > zone.maxX + SAME_LINE) continue;
    if (y < zone.minY - SAME_LINE || y > zone.maxY + SAME_LINE) continue;
    if (z === own) {
      if (!zone.convex && bodyDistance(zone.body, x, y) < zone.grow - SAME_LINE) return false;
      continue;
    }
    const spare = bodyDistance(zone.body, x, y) - zone.grow;
    if (spare < -SAME_LINE) return false;
    if (spare < SAME_LINE && yieldsTo(zone, z < own, piece, from, to)) return false;
  }
  return accepts(x, y);
}

/**
 * The middle of the sub-piece lies on the boundary of another zone. If all of it does, it gives way: to a zone on its free
 * side always, to one on its own side when that comes first in the list.
 */
function yieldsTo(zone: Grown, first: boolean, piece: Piece, from: number, to: number): boolean {
  const elsewhere = from + (to - from) * 0.3;
  const x = pieceX(piece, elsewhere);
  const y = pieceY(piece, elsewhere);
  if (Math.abs(bodyDistance(zone.body, x, y) - zone.grow) > SAME_LINE) return false;
  const step = 100 * SAME_LINE;
  const [nx, ny] = freeSide(piece, elsewhere);
  // Inside a body the distance is 0, which a zone grown by nothing must count as covered.
  if (bodyDistance(zone.body, x + nx * step, y + ny * step) <= zone.grow) return true;
  return first;
}

/** Unit normal towards the free side: left of the direction, counter-clockwise on screen. */
function freeSide(piece: Piece, t: number): [number, number] {
  if (piece.radius > 0) {
    const angle = piece.start + piece.sweep * t;
    return [Math.cos(angle), Math.sin(angle)];
  }
  const length = pieceLength(piece);
  return [(piece.y1 - piece.y0) / length, -(piece.x1 - piece.x0) / length];
}

function pieceX(piece: Piece, t: number): Mm {
  return piece.radius > 0
    ? piece.cx + piece.radius * Math.cos(piece.start + piece.sweep * t)
    : piece.x0 + (piece.x1 - piece.x0) * t;
}

function pieceY(piece: Piece, t: number): Mm {
  return piece.radius > 0
    ? piece.cy + piece.radius * Math.sin(piece.start + piece.sweep * t)
    : piece.y0 + (piece.y1 - piece.y0) * t;
}

function pieceLength(piece: Piece): Mm {
  return piece.radius > 0 ? piece.radius * piece.sweep : Math.hypot(piece.x1 - piece.x0, piece.y1 - piece.y0);
}

function subPiece(piece: Piece, from: number, to: number): Piece {
  return piece.radius > 0
    ? arcPiece(
        piece.zone,
        piece.cx,
        piece.cy,
        piece.radius,
        piece.start + piece.sweep * from,
        piece.sweep * (to - from),
      )
    : linePiece(piece.zone, pieceX(piece, from), pieceY(piece, from), pieceX(piece, to), pieceY(piece, to));
}
