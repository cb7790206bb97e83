import type { Mm } from '../../plan/model.ts';
import { vectorLength } from '../../plane/point.ts';
import type { Candidates } from './candidates.ts';
import { pieceCap, pieceMargin, segmentDistance } from './piece-margin.ts';
import { type Primitives, SEGMENT, STRIDE } from './primitives.ts';

/** The shape of a group of points, placed about their mean and rotated in any way. Lengths in mm. */
export interface Spread {
  /** The greatest distance of a point from the middle. */
  readonly extent: Mm;
  /** The least width of a strip that contains them, in any direction. */
  readonly width: Mm;
}

/** A single point. */
export const SINGLE_POINT: Spread = { extent: 0, width: 0 };

/** The margin at a point, an upper bound around it, and where to search next. Lengths in mm. */
export interface Assessment {
  /** The margin at the point itself. */
  readonly margin: Mm;
  /** Upper bound for all points within the reach. For a group with its middle within the reach, bound for its worst point. */
  readonly upper: Mm;
  /**
   * A point that may have a greater margin: half way between the two pieces that limit most from opposite sides; else
   * the point itself.
   */
  readonly x: Mm;
  readonly y: Mm;
}

/**
 * Returns bounds from each piece alone (Lipschitz) and from pairs of pieces on opposite sides: moving away from one is
 * moving toward the other, so that between two parallel walls the bound is exact at any reach. Pairs are skipped when
 * the bound without them is at most `enough`.
 */
export function assess(
  candidates: Candidates,
  square: number,
  x: Mm,
  y: Mm,
  reach: Mm,
  spread: Spread,
  enough: Mm,
): Assessment {
  const { primitives, pool, starts, ends } = candidates;
  const { kind, data } = primitives;
  const { extent } = spread;
  let margin = Number.POSITIVE_INFINITY;
  let upper = Number.POSITIVE_INFINITY;
  let nearest = -1;
  for (let n = starts[square] as number; n < (ends[square] as number); n++) {
    const piece = pool[n] as number;
    let here: Mm;
    let cap: Mm;
    if (kind[piece] === SEGMENT) {
      const k = piece * STRIDE;
      const distance = segmentDistance(data, k, x, y);
      const offset = data[k + 5] as number;
      const floor = data[k + 6] as number;
      const far = distance + reach;
      here = Math.max(floor, distance - offset);
      cap = Math.max(floor, (extent > 0 ? Math.sqrt(far * far + extent * extent) : far) - offset);
    } else {
      here = pieceMargin(primitives, piece, x, y);
      cap = here < upper ? pieceCap(primitives, piece, x, y, reach, extent) : upper;
    }
    if (here < margin) {
      margin = here;
      nearest = piece;
    }
    if (cap < upper) upper = cap;
  }
  if (upper <= enough || nearest < 0) return { margin, upper, x, y };
  return withOpposites(candidates, square, nearest, { margin, upper, x, y }, reach, spread);
}

/** A piece whose margin is nearly linear around a point: its value, gradient, and how much it may curve upward. */
interface Slope {
  readonly margin: Mm;
  readonly gx: number;
  readonly gy: number;
  readonly bend: Mm;
}

function withOpposites(
  candidates: Candidates,
  square: number,
  nearest: number,
  alone: Assessment,
  reach: Mm,
  spread: Spread,
): Assessment {
  const { primitives, pool, starts, ends } = candidates;
  const { margin } = alone;
  const { extent, width } = spread;
  const first = slopeOf(primitives, nearest, alone.x, alone.y, reach, extent);
  if (!first) return alone;
  let best = alone;
  for (let n = starts[square] as number; n < (ends[square] as number); n++) {
    const piece = pool[n] as number;
    const k = piece * STRIDE;
    if (primitives.kind[piece] !== SEGMENT) continue;
    // Quick rejection: a piece farther away than twice the reach does not tighten the bound.
    if (segmentDistance(primitives.data, k, alone.x, alone.y) - (primitives.data[k + 5] as number) > margin + 2 * reach)
      continue;
    const other = slopeOf(primitives, piece, alone.x, alone.y, reach, extent);
    if (!other || first.gx * other.gx + first.gy * other.gy >= 0) continue;
    const drift = vectorLength(first.gx + other.gx, first.gy + other.gy) / 2;
    // Between two straight walls, a wide group comes closer to both walls than its middle does.
    const straight = first.bend === 0 && other.bend === 0;
    const breadth = straight ? Math.max(0, width / 2 - drift * extent) : 0;
    const upper = (first.margin + first.bend + other.margin + other.bend) / 2 + drift * reach - breadth;
    if (upper >= best.upper) continue;
    const step = (other.margin - first.margin) / 2;
    best = { margin, upper, x: alone.x + first.gx * step, y: alone.y + first.gy * step };
  }
  return best;
}

/**
 * Returns the slope of a piece; null if it has none: too close, at its floor, or no segment. A straight segment that faces
 * the whole neighborhood has no curvature; else the distance to its nearest point curves by half the squared displacement
 * over the distance.
 */
function slopeOf({ kind, data }: Primitives, piece: number, x: Mm, y: Mm, reach: Mm, extent: Mm): Slope | null {
  if (kind[piece] !== SEGMENT) return null;
  const k = piece * STRIDE;
  const dx = data[k + 2] as number;
  const dy = data[k + 3] as number;
  const px = x - (data[k] as number);
  const py = y - (data[k + 1] as number);
  const along = (px * dx + py * dy) * (data[k + 4] as number);
  const t = Math.min(1, Math.max(0, along));
  const ex = px - t * dx;
  const ey = py - t * dy;
  const distance = Math.sqrt(ex * ex + ey * ey);
  const offset = data[k + 5] as number;
  const way = reach + extent;
  // At its floor, a margin no longer decreases with the distance.
  const room = distance - way;
  if (room <= 0 || room < offset + (data[k + 6] as number)) return null;
  const length = Math.sqrt(dx * dx + dy * dy);
  const faces = along * length >= way && (1 - along) * length >= way;
  const bend = faces ? 0 : (reach * reach + extent * extent) / (2 * room);
  return { margin: distance - offset, gx: ex / distance, gy: ey / distance, bend };
}
