import type { Mm, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import type { Edge } from './light-edges.ts';

/** A strip no wider than this is not lit, mm: rounding. */
const NARROWEST: Mm = 1e-6;
/** Rounding of a depth, mm. */
export const ROUNDING: Mm = 1e-6;
/** Two directions that differ by less than this are equal. */
const SAME_DIRECTION = 1e-12;

/** Returns the corners that may be in a beam: its own two first, then those of edges, and the points where edges reach `far`. */
export function cornersIn(
  { k0, k1, left, right, near }: { k0: number; k1: number; left: XY; right: XY; near: Mm },
  edges: readonly Edge[],
  far: Mm,
): XY[] {
  const corners: XY[] = [left, right];
  const seen = new Map<Mm, Mm[]>();
  const add = (p: XY) => {
    if (p[1] <= near || p[1] > far) return;
    const above = seen.get(p[0]);
    if (above?.includes(p[1])) return;
    if (above) above.push(p[1]);
    else seen.set(p[0], [p[1]]);
    const rightOf = (k: number) => p[0] - p[1] * k - (left[0] - left[1] * k);
    const leftOf = (k: number) => right[0] - right[1] * k - (p[0] - p[1] * k);
    if (Math.max(rightOf(k0), rightOf(k1)) > 0 && Math.max(leftOf(k0), leftOf(k1)) > 0) corners.push(p);
  };
  for (const { a, b } of edges) {
    add(a);
    add(b);
    if (a[1] > far !== b[1] > far) add([a[0] + ((b[0] - a[0]) * (far - a[1])) / (b[1] - a[1]), far]);
  }
  return corners;
}

/** Returns k0, k1 and the directions between them in which two corners are behind each other. */
export function eventsOf(corners: readonly XY[], k0: number, k1: number): number[] {
  const events = [k0, k1];
  for (let i = 0; i < corners.length; i++) {
    const [xi, yi] = corners[i] as XY;
    for (let j = 0; j < i; j++) {
      const [xj, yj] = corners[j] as XY;
      const k = (xi - xj) / (yi - yj);
      if (k > k0 && k < k1) events.push(k);
    }
  }
  events.sort((a, b) => a - b);
  return events.filter((k, i) => i === 0 || k - (events[i - 1] as number) > SAME_DIRECTION || i === events.length - 1);
}

interface Interval {
  readonly i: number;
  j: number;
  readonly edge: number;
}

/** Returns the edges that light in one direction meets between the corners, from left to right. */
export function stripsAt(
  k: number,
  corners: readonly XY[],
  edges: readonly Edge[],
  from: Edge,
  far: Mm,
  stops: (edge: Edge, k: number) => boolean,
): readonly Interval[] {
  const across = corners.map(([x, y]) => x - y * k);
  const [least, most] = [across[0] as number, across[1] as number];
  assert(across.length >= 2, 'a beam has two sides');
  if (most - least <= NARROWEST) return [];
  const order = across.map((_, i) => i).filter((i) => (across[i] as number) >= least && (across[i] as number) <= most);
  order.sort((i, j) => (across[i] as number) - (across[j] as number));
  const met = edges.flatMap((edge, index) => {
    if (!stops(edge, k)) return [];
    const [s, t] = [edge.a[0] - edge.a[1] * k, edge.b[0] - edge.b[1] * k];
    return s === t ? [] : [{ edge, index, s, t }];
  });
  const strips: Interval[] = [];
  for (let n = 0; n + 1 < order.length; n++) {
    const [i, j] = [order[n] as number, order[n + 1] as number];
    const [s, t] = [across[i] as number, across[j] as number];
    if (t - s <= NARROWEST) continue;
    const edge = firstMet((s + t) / 2, k, met, from, far);
    const last = strips[strips.length - 1];
    if (last && last.edge === edge) last.j = j;
    else strips.push({ i, j, edge });
  }
  return strips;
}

function firstMet(
  at: number,
  k: number,
  met: readonly { edge: Edge; index: number; s: number; t: number }[],
  { a, b }: Edge,
  far: Mm,
): number {
  const [p, q] = [a[0] - a[1] * k, b[0] - b[1] * k];
  const share = p === q ? 0 : Math.max(0, Math.min(1, (at - p) / (q - p)));
  const start = a[1] + (b[1] - a[1]) * share - ROUNDING;
  let [least, found] = [far, -1];
  for (const { edge, index, s, t } of met) {
    if (at < Math.min(s, t) || at > Math.max(s, t)) continue;
    const y = edge.a[1] + ((edge.b[1] - edge.a[1]) * (at - s)) / (t - s);
    if (y < start || y >= least) continue;
    least = y;
    found = index;
  }
  return found;
}
