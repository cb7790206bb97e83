import type { Mm } from '../../plan/model.ts';
import { HANGING, INSIDE, type Primitives, SECTOR, SEGMENT, STRIDE } from './primitives.ts';

/**
 * Returns the margin of one piece at a point, mm; positive infinity for an `INSIDE` piece outside its body.
 * 1-Lipschitz, except that an `INSIDE` piece is so only together with the edges of its body.
 */
export function pieceMargin({ kind, data, owner, bodies }: Primitives, i: number, x: Mm, y: Mm): Mm {
  const k = i * STRIDE;
  switch (kind[i]) {
    case SEGMENT:
      return Math.max(data[k + 6] as number, segmentDistance(data, k, x, y) - (data[k + 5] as number));
    case HANGING:
      return hangingMargin(data, k, segmentDistance(data, k, x, y));
    case SECTOR:
      return sectorMargin(data, k, x, y);
    default: {
      const body = bodies[owner[i] as number];
      const within = body?.kind === 'ring' && ringContains(body.flat, x, y);
      return within ? (data[k + 6] as number) : Number.POSITIVE_INFINITY;
    }
  }
}

/**
 * Returns an upper bound of the margin of one piece around a point, mm: for the best point within `reach`. With an
 * extent, the bound is for the worst of several points within that extent of their mean, which is within `reach`: by the
 * parallel axis theorem the nearest of them to a point is at most the root of both squares away.
 */
export function pieceCap(primitives: Primitives, i: number, x: Mm, y: Mm, reach: Mm, extent: Mm): Mm {
  const { kind, data } = primitives;
  const k = i * STRIDE;
  if (kind[i] === INSIDE) return insideCap(primitives, i, x, y, reach + extent);
  if (kind[i] === SECTOR) return sectorMargin(data, k, x, y) + reach + extent;
  const far = segmentDistance(data, k, x, y) + reach;
  const most = extent > 0 ? Math.sqrt(far * far + extent * extent) : far;
  if (kind[i] === HANGING) return hangingMargin(data, k, most);
  // Deep within its offset, a piece stays at its floor.
  return Math.max(data[k + 6] as number, most - (data[k + 5] as number));
}

/** Returns the distance from a point to the segment at `k`, mm. */
export function segmentDistance(data: Float64Array, k: number, x: Mm, y: Mm): Mm {
  const dx = data[k + 2] as number;
  const dy = data[k + 3] as number;
  const px = x - (data[k] as number);
  const py = y - (data[k + 1] as number);
  const along = (px * dx + py * dy) * (data[k + 4] as number);
  const t = along < 0 ? 0 : Math.min(1, along);
  const ex = px - t * dx;
  const ey = py - t * dy;
  return Math.sqrt(ex * ex + ey * ey);
}

/** Returns the gradient of the margin of a segment or hanging piece at a point, per mm; zero on it and at its floor. */
export function pieceGradient({ kind, data }: Primitives, i: number, x: Mm, y: Mm): readonly [number, number] {
  const k = i * STRIDE;
  const dx = data[k + 2] as number;
  const dy = data[k + 3] as number;
  const px = x - (data[k] as number);
  const py = y - (data[k + 1] as number);
  const t = Math.min(1, Math.max(0, (px * dx + py * dy) * (data[k + 4] as number)));
  const ex = px - t * dx;
  const ey = py - t * dy;
  const distance = Math.sqrt(ex * ex + ey * ey);
  if (kind[i] === SEGMENT) {
    const atFloor = distance - (data[k + 5] as number) <= (data[k + 6] as number);
    return atFloor || distance === 0 ? [0, 0] : [ex / distance, ey / distance];
  }
  const inPlan = distance - (data[k + 5] as number);
  if (inPlan <= 0 || distance === 0) return [0, 0];
  const share = inPlan / Math.sqrt(inPlan * inPlan + (data[k + 7] as number) ** 2) / distance;
  return [ex * share, ey * share];
}

/**
 * Returns the margin at a horizontal distance from the axis: distance in space to an item above, minus the required
 * one.
 */
export function hangingMargin(data: Float64Array, k: number, distance: Mm): Mm {
  const height = data[k + 7] as number;
  const inPlan = Math.max(0, distance - (data[k + 5] as number));
  return Math.sqrt(inPlan * inPlan + height * height) - (height - (data[k + 6] as number));
}

/**
 * Returns the rim's signed distance to a stream, mm: to the arc, the nearer side, or the apex; negative within. No
 * trigonometry.
 */
export function sectorMargin(data: Float64Array, k: number, x: Mm, y: Mm): Mm {
  const px = x - (data[k] as number);
  const py = y - (data[k + 1] as number);
  const ux = data[k + 2] as number;
  const uy = data[k + 3] as number;
  const cos = data[k + 4] as number;
  const sin = data[k + 5] as number;
  const reach = data[k + 6] as number;
  const ahead = px * ux + py * uy;
  const aside = Math.abs(py * ux - px * uy);
  // In the frame of the nearer side: along it, and inwards.
  const along = ahead * cos + aside * sin;
  const within = ahead * sin - aside * cos;
  return sectorDistance(along, within, reach, px, py) - (data[k + 7] as number);
}

function sectorDistance(along: Mm, within: Mm, reach: Mm, px: Mm, py: Mm): Mm {
  if (within < 0) {
    const past = along - Math.min(reach, Math.max(0, along));
    return Math.sqrt(within * within + past * past);
  }
  const out = Math.sqrt(px * px + py * py);
  if (out > reach) return out - reach;
  return -Math.min(reach - out, along > 0 ? within : out);
}

/** Returns an upper bound for an `INSIDE` piece: deep inside its body, its floor applies all around. */
function insideCap(primitives: Primitives, i: number, x: Mm, y: Mm, reach: Mm): Mm {
  const { data, owner, bodies } = primitives;
  const body = bodies[owner[i] as number];
  if (body?.kind !== 'ring' || !ringContains(body.flat, x, y)) return Number.POSITIVE_INFINITY;
  return edgesDistance(body.flat, x, y) >= reach ? (data[i * STRIDE + 6] as number) : Number.POSITIVE_INFINITY;
}

/** Returns the distance from a point to the edges of a ring, from inside or outside, mm. */
function edgesDistance(flat: Float64Array, x: Mm, y: Mm): Mm {
  let leastSq = Number.POSITIVE_INFINITY;
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const dx = bx - ax;
    const dy = by - ay;
    const px = x - ax;
    const py = y - ay;
    const lengthSq = dx * dx + dy * dy;
    const t = lengthSq > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / lengthSq)) : 0;
    const ex = px - t * dx;
    const ey = py - t * dy;
    leastSq = Math.min(leastSq, ex * ex + ey * ey);
    ax = bx;
    ay = by;
  }
  return Math.sqrt(leastSq);
}

/** Returns whether a point is inside a ring by the even-odd rule; undefined on its edges. */
function ringContains(flat: Float64Array, x: Mm, y: Mm): boolean {
  let inside = false;
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    if (ay > y !== by > y && (x - ax) * (by - ay) < (bx - ax) * (y - ay) === by > ay) inside = !inside;
    ax = bx;
    ay = by;
  }
  return inside;
}
