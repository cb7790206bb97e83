import { type Body, bodyDistance, signedBodyDistance } from '../plane/body.ts';
import type { Extent } from '../plane/extent.ts';
import type { Mm } from '../plane/types.ts';
import type { Hole } from './hole.ts';
import { addGrownOutline, addInsetOutline, isConvex, mostGrownPieces, mostInsetPieces } from './outline.ts';
import { OutlineStore } from './outline-store.ts';
import { apexX, apexY, at, freeSide, hasApex, pieceX, pieceY, RADIUS, X0, X1, Y0, Y1 } from './pieces.ts';

/**
 * Returns the zone of a body grown by `grow` mm, minus a hole.
 *
 * @param store where its outline is kept, with those of other zones
 */
export function growZone(body: Body, grow: Mm, hole: Hole | null = null, store = new OutlineStore()): GrownZone {
  const inset = hole?.body.kind === 'ring' ? hole.body.flat : null;
  const block = store.blockFor(mostGrownPieces(body, grow) + (inset ? mostInsetPieces(inset) : 0));
  const start = block.length;
  addGrownOutline(block, body, grow);
  if (hole && inset) addInsetOutline(block, inset, hole.depth);
  return new GrownZone(body, grow, hole, block.data, start, block.length);
}

/**
 * A zone: a body grown by the distance that the axis of a detector keeps from it, with its outline precomputed. The
 * bounding box is computed from that of the body, which saves four numbers for each of thousands of zones.
 */
export class GrownZone implements Extent {
  readonly body: Body;
  readonly grow: Mm;
  /** The free part within, on top of an item that supports the detector. Null for none. */
  readonly hole: Hole | null;
  /** Flat pieces, see `pieces.ts`: those from `start` to `end`. Other zones keep theirs in the same array. */
  readonly outline: Float64Array;
  readonly start: number;
  readonly end: number;
  readonly convex: boolean;

  constructor(body: Body, grow: Mm, hole: Hole | null, outline: Float64Array, start: number, end: number) {
    this.body = body;
    this.grow = grow;
    this.hole = hole;
    this.outline = outline;
    this.start = start;
    this.end = end;
    this.convex = !hole && isConvex(body);
  }

  get minX(): Mm {
    return this.body.extent.minX - this.grow;
  }

  get minY(): Mm {
    return this.body.extent.minY - this.grow;
  }

  get maxX(): Mm {
    return this.body.extent.maxX + this.grow;
  }

  get maxY(): Mm {
    return this.body.extent.maxY + this.grow;
  }
}

/** Returns the outline of one zone alone. */
export function outlineOf({ outline, start, end }: GrownZone): Float64Array {
  return outline.subarray(start, end);
}

/** Returns the signed distance of a point to a zone, mm; negative inside. */
export function zoneDistance({ body, grow, hole }: GrownZone, x: Mm, y: Mm): Mm {
  const outside = bodyDistance(body, x, y) - grow;
  return hole === null || outside >= 0 ? outside : Math.max(outside, -signedBodyDistance(hole.body, x, y) - hole.depth);
}

/**
 * Boundaries this close coincide, mm. Coordinates of a house carry about 1e-10 mm of
 * rounding, and no tape resolves anything near this.
 */
export const COINCIDENT = 1e-6;

/**
 * How far to step from a shared boundary to see on which side a zone is, mm. The near step finds one that is thinner than
 * the far one: the joint of two walls nearly in line.
 */
const STEPS: readonly Mm[] = [COINCIDENT, 100 * COINCIDENT];

/** Returns whether a point lies inside a convex zone, off its boundary. */
export function containsStrictly({ body, grow }: GrownZone, x: Mm, y: Mm): boolean {
  if (body.kind !== 'ring') return bodyDistance(body, x, y) < grow - COINCIDENT;
  // Inside a body the distance is 0, whatever the depth.
  return grow === 0 ? isDeepIn(body.flat, x, y) : isNear(body.flat, x, y, grow - COINCIDENT);
}

/** Returns whether a point is in a convex ring that runs clockwise on screen, or closer to it than `reach`. */
function isNear(flat: Float64Array, x: Mm, y: Mm, reach: Mm): boolean {
  const reachSq = reach * reach;
  let isInside = true;
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const ex = bx - ax;
    const ey = by - ay;
    const px = x - ax;
    const py = y - ay;
    const right = ex * py - ey * px;
    if (right < 0) {
      const lengthSq = ex * ex + ey * ey;
      // Too far from the line of one edge is too far from the ring.
      if (right * right >= reachSq * lengthSq) return false;
      const along = ex * px + ey * py;
      if (along >= 0 && along <= lengthSq) return true;
      const qx = along < 0 ? px : x - bx;
      const qy = along < 0 ? py : y - by;
      if (qx * qx + qy * qy < reachSq) return true;
      isInside = false;
    }
    ax = bx;
    ay = by;
  }
  return isInside;
}

/**
 * Returns whether a point is right of every edge of a convex ring that runs clockwise on screen, by more than
 * `COINCIDENT`.
 */
function isDeepIn(flat: Float64Array, x: Mm, y: Mm): boolean {
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const right = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    if (right <= 0 || right * right <= COINCIDENT * COINCIDENT * ((bx - ax) * (bx - ax) + (by - ay) * (by - ay)))
      return false;
    ax = bx;
    ay = by;
  }
  return true;
}

/**
 * Returns whether a convex zone contains both ends of a piece and, for an arc, the intersection of the tangents at its
 * ends.
 */
export function coversPiece(zone: GrownZone, p: Float64Array, k: number): boolean {
  if (!zone.convex) return false;
  if (!containsStrictly(zone, at(p, k + X0), at(p, k + Y0)) || !containsStrictly(zone, at(p, k + X1), at(p, k + Y1)))
    return false;
  return at(p, k + RADIUS) === 0 || (hasApex(p, k) && containsStrictly(zone, apexX(p, k), apexY(p, k)));
}

/**
 * Called when the middle of the sub-piece lies on the boundary of another zone. If the boundaries coincide, returns
 * whether the other zone takes precedence: always when it is on the free side; when it is on the same side, if it
 * comes first in the list.
 */
export function isShadowedBy(
  zone: GrownZone,
  first: boolean,
  p: Float64Array,
  k: number,
  from: number,
  to: number,
): boolean {
  const elsewhere = from + (to - from) * 0.3;
  const x = pieceX(p, k, elsewhere);
  const y = pieceY(p, k, elsewhere);
  if (Math.abs(zoneDistance(zone, x, y)) > COINCIDENT) return false;
  const [nx, ny] = freeSide(p, k, elsewhere);
  // `<=` because the distance inside a body is 0, and with `grow` 0 that point is covered.
  const isOnFreeSide = (step: Mm) => zoneDistance(zone, x + nx * step, y + ny * step) <= 0;
  return first || STEPS.some(isOnFreeSide);
}
