/** Outlines for drawing: where zones of one rule overlap, only the visible parts. Arcs stay arcs. */

import { cutPair } from '../arrangement/crossings.ts';
import { at, MAX_X, MAX_Y, MIN_X, MIN_Y, Pieces, STRIDE } from '../arrangement/pieces.ts';
import type { Edge } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/extent.ts';
import { memoize } from '../plane/memoize.ts';
import { along } from '../plane/point.ts';
import type { RuleId } from '../rules/types.ts';
import { arcRingsContain } from './nearest.ts';
import type { Zone } from './types.ts';

/** Cuts this close to each other or to an end of the edge are one: rounding, mm. */
const SAME_CUT: Mm = 0.001;

/** Connected parts of a zone's outline, each starting where the previous one ends. */
export type Stretch = readonly Edge[];

/**
 * Returns the parts of each zone's outline that are not inside another zone of its rule, in zone order. A zone that
 * others cover has none. Cached by the identity of the zone: only zones with changed neighbors are recomputed.
 */
export function visibleEdges(zones: readonly Zone[]): ReadonlyMap<Zone, readonly Stretch[]> {
  const steps = visibleEdgesInSteps(zones);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** Computes `visibleEdges` zone by zone, for a caller that has other work in between. */
export function* visibleEdgesInSteps(zones: readonly Zone[]): Generator<void, ReadonlyMap<Zone, readonly Stretch[]>> {
  const nearOf = neighborsOf(zones);
  const scratch = new Pieces(64);
  const visible = new Map<Zone, readonly Stretch[]>();
  for (const zone of zones) {
    visible.set(zone, visibleStretches(zone, nearOf(zone), scratch));
    yield;
  }
  return visible;
}

/** Returns how many of the zones have no cached stretches yet. */
export function newZones(zones: readonly Zone[]): number {
  return zones.reduce((count, zone) => count + (stretchCache.has(zone) ? 0 : 1), 0);
}

interface CachedStretches {
  readonly others: readonly ZoneEntry[];
  readonly stretches: readonly Stretch[];
}
const stretchCache = new WeakMap<Zone, CachedStretches>();

function visibleStretches(zone: Zone, others: readonly ZoneEntry[], scratch: Pieces): readonly Stretch[] {
  const before = stretchCache.get(zone);
  const same =
    before?.others.length === others.length && before.others.every((other, i) => other.zone === others[i]?.zone);
  if (before && same) return before.stretches;
  const visible = zone.outlines.flatMap((ring) => stretches(ring, others, scratch));
  stretchCache.set(zone, { others, stretches: visible });
  return visible;
}

/** Returns a function from a zone to the other zones of its rule that may cover part of it, in list order. */
function neighborsOf(zones: readonly Zone[]): (zone: Zone) => readonly ZoneEntry[] {
  const ofRule = new Map<RuleId, SortedZones>();
  zones.forEach((zone, place) => {
    const row = ofRule.get(zone.rule) ?? { entries: [], widest: 0 };
    const extent = zoneExtent(zone);
    row.entries.push({ zone, place, extent });
    row.widest = Math.max(row.widest, extent.maxX - extent.minX);
    ofRule.set(zone.rule, row);
  });
  for (const { entries } of ofRule.values()) entries.sort((a, b) => a.extent.minX - b.extent.minX);
  return (zone) => {
    const { entries, widest } = ofRule.get(zone.rule) ?? { entries: [], widest: 0 };
    const own = zoneExtent(zone);
    const near: ZoneEntry[] = [];
    for (let k = firstFrom(entries, own.minX - widest); k < entries.length; k++) {
      const other = entries[k] as ZoneEntry;
      if (other.extent.minX >= own.maxX) break;
      if (other.zone !== zone && meet(other.extent, own)) near.push(other);
    }
    return near.sort((a, b) => a.place - b.place);
  };
}

/** The zones of a rule, sorted by left edge. */
interface SortedZones {
  readonly entries: ZoneEntry[];
  widest: Mm;
}
interface ZoneEntry {
  readonly zone: Zone;
  readonly place: number;
  readonly extent: Extent;
}

/** Binary search for the first entry whose left edge is at `least` or right of it. */
function firstFrom(entries: readonly ZoneEntry[], least: Mm): number {
  let [low, high] = [0, entries.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((entries[middle] as ZoneEntry).extent.minX < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

function uncoveredBy(others: readonly ZoneEntry[]): (p: XY) => boolean {
  return (p) => !others.some(({ zone, extent }) => extentContains(extent, p) && arcRingsContain(zone.outlines, p));
}

/** Returns the point of an edge at a fraction of its length, 0 to 1. */
export function onEdge(edge: Edge, share: number): XY {
  if (edge.kind === 'line') return along(edge.from, edge.to, share);
  const angle = edge.start + edge.sweep * share;
  return [edge.center[0] + edge.radius * Math.cos(angle), edge.center[1] + edge.radius * Math.sin(angle)];
}

/** Returns the length of an edge, mm. */
export function edgeLength(edge: Edge): Mm {
  if (edge.kind === 'arc') return edge.radius * Math.abs(edge.sweep);
  return Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]);
}

function stretches(ring: readonly Edge[], others: readonly ZoneEntry[], scratch: Pieces): readonly Stretch[] {
  const found: Edge[][] = [];
  let fromFirstCorner = false;
  let open = false;
  for (const edge of ring) {
    const own = edgeExtent(edge);
    const near = others.filter(({ extent }) => meet(extent, own));
    for (const [from, to] of visibleShares(edge, near, scratch)) {
      if (open && from === 0) found.at(-1)?.push(partOf(edge, from, to));
      else found.push([partOf(edge, from, to)]);
      fromFirstCorner ||= edge === ring[0] && from === 0;
      open = to === 1;
    }
    if (near.length > 0 && !uncoveredBy(near)(onEdge(edge, 1))) open = false;
  }
  // The stretches before and after the ring's first corner are one stretch.
  if (fromFirstCorner && open && found.length > 1) found[0]?.unshift(...(found.pop() ?? []));
  return found;
}

const WHOLE = [[0, 1]] as const;

/** Returns the visible intervals of an edge, as fractions of its length: between two cuts an edge is either wholly visible or hidden. */
function visibleShares(
  edge: Edge,
  others: readonly ZoneEntry[],
  scratch: Pieces,
): readonly (readonly [number, number])[] {
  if (others.length === 0) return WHOLE;
  const isVisible = uncoveredBy(others);
  const cuts = cutsOf(edge, others, scratch);
  if (cuts.length === 0) return isVisible(onEdge(edge, 0.5)) ? WHOLE : [];
  const spans: [number, number][] = [];
  let from = 0;
  for (const to of [...cuts, 1]) {
    if (isVisible(onEdge(edge, (from + to) / 2))) {
      const last = spans.at(-1);
      if (last?.[1] === from) last[1] = to;
      else spans.push([from, to]);
    }
    from = to;
  }
  return spans;
}

/** Returns where outlines of other zones cross or touch an edge, as fractions of its length, in order. */
function cutsOf(edge: Edge, others: readonly ZoneEntry[], scratch: Pieces): readonly number[] {
  scratch.length = 0;
  pushEdge(scratch, edge);
  for (const { zone } of others) {
    const outlines = flatOutlines(zone);
    for (let k = 0; k < outlines.length; k += STRIDE)
      if (meetBoxes(scratch.data, outlines, k)) scratch.copy(outlines, k);
  }
  const { data, length } = scratch;
  const isReversed = edge.kind === 'arc' && edge.sweep < 0;
  const shares: number[] = [];
  const cut = (piece: number, share: number) => {
    if (piece === 0) shares.push(isReversed ? 1 - share : share);
  };
  for (let k = STRIDE; k < length; k += STRIDE) cutPair(data, 0, k, cut);
  const least = SAME_CUT / edgeLength(edge);
  let last = 0;
  return shares
    .sort((a, b) => a - b)
    .filter((share) => {
      if (share - last <= least || 1 - share <= least) return false;
      last = share;
      return true;
    });
}

/** Returns all outlines of a zone as flat pieces; memoized. */
const flatOutlines = memoize((zone: Zone): Float64Array => {
  if (zone.pieces) return zone.pieces;
  const pieces = new Pieces(zone.outlines.reduce((sum, outline) => sum + outline.length, 0));
  for (const outline of zone.outlines) for (const edge of outline) pushEdge(pieces, edge);
  return pieces.data;
});

/** Appends an edge; an arc is reversed if needed, because pieces only have arcs with a positive sweep. */
function pushEdge(pieces: Pieces, edge: Edge): void {
  if (edge.kind === 'line') {
    pieces.line(edge.from[0], edge.from[1], edge.to[0], edge.to[1]);
    return;
  }
  const { center, radius, start, sweep } = edge;
  pieces.arc(center[0], center[1], radius, sweep < 0 ? start + sweep : start, Math.abs(sweep));
}

/** Returns whether the bounding boxes of the first piece of `p` and of piece `k` of `q` overlap or touch. */
function meetBoxes(p: Float64Array, q: Float64Array, k: number): boolean {
  return (
    at(p, MIN_X) <= at(q, k + MAX_X) + SAME_CUT &&
    at(p, MAX_X) >= at(q, k + MIN_X) - SAME_CUT &&
    at(p, MIN_Y) <= at(q, k + MAX_Y) + SAME_CUT &&
    at(p, MAX_Y) >= at(q, k + MIN_Y) - SAME_CUT
  );
}

function partOf(edge: Edge, from: number, to: number): Edge {
  if (from === 0 && to === 1) return edge;
  if (edge.kind === 'line') return { kind: 'line', from: onEdge(edge, from), to: onEdge(edge, to) };
  return { ...edge, start: edge.start + edge.sweep * from, sweep: edge.sweep * (to - from) };
}

/** Returns the bounding box of the zone; inverted (minimum above maximum) if it has no outline. */
export const zoneExtent = memoize((zone: Zone): Extent => {
  const outlines = flatOutlines(zone);
  let [minX, minY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [maxX, maxY] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < outlines.length; k += STRIDE) {
    minX = Math.min(minX, at(outlines, k + MIN_X));
    minY = Math.min(minY, at(outlines, k + MIN_Y));
    maxX = Math.max(maxX, at(outlines, k + MAX_X));
    maxY = Math.max(maxY, at(outlines, k + MAX_Y));
  }
  return { minX, minY, maxX, maxY };
});

/** Returns a bounding box of an edge; for an arc that of its circle. */
function edgeExtent(edge: Edge): Extent {
  if (edge.kind === 'line') return ringExtent([edge.from, edge.to]);
  const { center, radius } = edge;
  return {
    minX: center[0] - radius,
    minY: center[1] - radius,
    maxX: center[0] + radius,
    maxY: center[1] + radius,
  };
}

function meet(a: Extent, b: Extent): boolean {
  return a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;
}

function extentContains({ minX, minY, maxX, maxY }: Extent, [x, y]: XY): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}
