import Flatbush from 'flatbush';
import { bodyDistance } from '../plane/body.ts';
import type { Mm } from '../plane/types.ts';
import type { Grown } from './zone.ts';

/**
 * Boundaries that lie within this of each other, mm, are one boundary. Coordinates of a house carry about 1e-10 mm of
 * rounding; nothing that a tape can tell is anywhere near.
 */
export const SAME_LINE = 1e-6;

/** More zones than this are looked up by place: going through all of them for every piece takes longer. */
export const MANY_ZONES = 400;

/** So many zones in turn may cover the begin of a line, each at least this share of it. */
const MOST_TURNS = 8;
const LEAST_TURN = 1e-5;

/** So many of the zones that covered lines are tried first; one that covers this share of the line is good enough. */
const MOST_TAKERS = 6;
const GOOD_TURN = 0.05;

/** x and y of the beginning, x and y of the end. */
export type Line = readonly [Mm, Mm, Mm, Mm];

/** A long list of zones, looked up by place. Zones are known by their place in the list. */
export class ManyZones {
  private readonly zones: readonly Grown[];
  private readonly index: Flatbush;
  /** Those that were last found to cover lines, the latest first. */
  private readonly takers: number[] = [];

  constructor(zones: readonly Grown[]) {
    this.zones = zones;
    this.index = new Flatbush(zones.length);
    for (const { minX, minY, maxX, maxY } of zones) this.index.add(minX, minY, maxX, maxY);
    this.index.finish();
  }

  /** Whether any zone with its box about a point answers. */
  anyAt(x: Mm, y: Mm, answers: (z: number) => boolean): boolean {
    let found = false;
    this.index.search(x - SAME_LINE, y - SAME_LINE, x + SAME_LINE, y + SAME_LINE, (z) => {
      found ||= answers(z);
      return false; // the list of what is found is not asked for
    });
    return found;
  }

  /** Whether any zone that may cover what has its least corner there answers: those that lately covered something are asked first. */
  anyCovering(x: Mm, y: Mm, answers: (z: number) => boolean): boolean {
    if (this.takers.some(answers)) return true;
    let taker = -1;
    this.anyAt(x, y, (z) => {
      if (answers(z)) taker = z;
      return taker >= 0;
    });
    if (taker >= 0) this.remember(taker);
    return taker >= 0;
  }

  private remember(taker: number): void {
    this.takers.unshift(taker);
    if (this.takers.length > MOST_TAKERS) this.takers.pop();
  }

  /** How far from its beginning, 0…1, zones other than its `own` cover a line one after the other. */
  heldFrom(line: Line, own: number): number {
    let from = 0;
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const to = this.heldByOne(line, own, from);
      if (to === 1) return 1;
      if (to - from < LEAST_TURN) return from;
      from = to;
    }
    return from;
  }

  /** How far from a place on a line one zone covers it: one that lately covered another if any does, else the one that goes farthest. */
  private heldByOne(line: Line, own: number, from: number): number {
    const { zones, takers } = this;
    const [x0, y0, x1, y1] = line;
    const x = x0 + (x1 - x0) * from;
    const y = y0 + (y1 - y0) * from;
    let to = from;
    let best = -1;
    const tryZone = (z: number): boolean => {
      const zone = zones[z] as Grown;
      if (z === own || !zone.convex || !holds(zone, x, y)) return false;
      const held = heldUpTo(zone, line, to);
      if (held > to) best = z;
      to = held;
      return to === 1;
    };
    if (takers.some(tryZone) || to - from >= GOOD_TURN) return to;
    this.anyAt(x, y, tryZone);
    if (best >= 0 && !takers.includes(best)) this.remember(best);
    return to;
  }
}

/** How far along a line, 0…1, a convex zone that holds its beginning holds it; `known` where that is as far. */
function heldUpTo(zone: Grown, [x0, y0, x1, y1]: Line, known: number): number {
  const isHeld = (t: number) => holds(zone, x0 + (x1 - x0) * t, y0 + (y1 - y0) * t);
  if (isHeld(1)) return 1;
  let held = known + LEAST_TURN;
  if (held >= 1 || !isHeld(held)) return known;
  let beyond = 1;
  while (beyond - held > LEAST_TURN / 2) {
    const middle = (held + beyond) / 2;
    if (isHeld(middle)) held = middle;
    else beyond = middle;
  }
  return held;
}

/** Whether a point lies inside a convex zone, clear of its boundary. */
export function holds({ body, grow }: Grown, x: Mm, y: Mm): boolean {
  if (body.kind !== 'ring') return bodyDistance(body, x, y) < grow - SAME_LINE;
  // Within a body the distance is 0, whatever the depth.
  return grow === 0 ? isDeepIn(body.flat, x, y) : isNear(body.flat, x, y, grow - SAME_LINE);
}

/** Whether a point lies in a convex ring that runs clockwise on screen or nearer to it than `reach`. */
function isNear(flat: Float64Array, x: Mm, y: Mm, reach: Mm): boolean {
  const reachSq = reach * reach;
  let isInside = true;
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const [ex, ey, px, py] = [bx - ax, by - ay, x - ax, y - ay];
    const right = ex * py - ey * px;
    if (right < 0) {
      const lengthSq = ex * ex + ey * ey;
      // Too far out of one side is too far from all of it.
      if (right * right >= reachSq * lengthSq) return false;
      const along = ex * px + ey * py;
      if (along >= 0 && along <= lengthSq) return true;
      const [qx, qy] = along < 0 ? [px, py] : [x - bx, y - by];
      if (qx * qx + qy * qy < reachSq) return true;
      isInside = false;
    }
    ax = bx;
    ay = by;
  }
  return isInside;
}

/** Whether a point lies right of every edge of a convex ring that runs clockwise on screen, clear of its boundary. */
function isDeepIn(flat: Float64Array, x: Mm, y: Mm): boolean {
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const right = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    if (right <= 0 || right * right <= SAME_LINE * SAME_LINE * ((bx - ax) * (bx - ax) + (by - ay) * (by - ay)))
      return false;
    ax = bx;
    ay = by;
  }
  return true;
}
