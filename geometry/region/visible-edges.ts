/** Outlines for drawing: of overlapping zones of one rule, only the visible parts. Arcs stay arcs. */

import type { Edge } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/body.ts';
import { along } from '../plane/point.ts';
import type { RuleId } from '../rules/types.ts';
import { arcRingsContain } from './nearest.ts';
import type { Zone } from './types.ts';

/** Sampling distance, mm: a shorter visible stretch may be missed. For drawing only. */
const PIECE: Mm = 40;
/** Bisection steps for the end of a visible stretch: 40 mm to 0.01 mm. */
const BISECTIONS = 12;

/** Connected parts of a zone's outline, each starting where the previous one ends. */
export type Stretch = readonly Edge[];

/**
 * Returns the parts of each zone's outline that are not inside another zone of its rule, in zone order. A zone that
 * others cover has none. Cached by the identity of the zone: only zones with changed neighbors are recomputed.
 *
 * @param piece sampling distance, mm; coarser than the default during a drag. A finer cached result is used as it is
 */
export function visibleEdges(zones: readonly Zone[], piece: Mm = PIECE): ReadonlyMap<Zone, readonly Stretch[]> {
  const nearOf = neighborsOf(zones);
  return new Map(zones.map((zone) => [zone, visibleStretches(zone, nearOf(zone), piece)]));
}

interface CachedStretches {
  readonly others: readonly Zone[];
  readonly piece: Mm;
  readonly stretches: readonly Stretch[];
}
const stretchCache = new WeakMap<Zone, CachedStretches>();

function visibleStretches(zone: Zone, others: readonly Zone[], piece: Mm): readonly Stretch[] {
  const before = stretchCache.get(zone);
  const same = before?.others.length === others.length && before.others.every((other, i) => other === others[i]);
  if (before && same && before.piece <= piece) return before.stretches;
  const visible = zone.outlines.flatMap((ring) => stretches(ring, others, piece));
  stretchCache.set(zone, { others, piece, stretches: visible });
  return visible;
}

/** Returns a function from a zone to the other zones of its rule that may cover part of it, in list order. */
function neighborsOf(zones: readonly Zone[]): (zone: Zone) => readonly Zone[] {
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
    return near.sort((a, b) => a.place - b.place).map((other) => other.zone);
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

/** Binary search for the first whose left edge is at `least` or right of it. */
function firstFrom(entries: readonly ZoneEntry[], least: Mm): number {
  let [low, high] = [0, entries.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((entries[middle] as ZoneEntry).extent.minX < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

function uncoveredBy(others: readonly Zone[]): (p: XY) => boolean {
  return (p) => !others.some((other) => extentContains(zoneExtent(other), p) && arcRingsContain(other.outlines, p));
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

function stretches(ring: readonly Edge[], others: readonly Zone[], piece: Mm): readonly Stretch[] {
  const found: Edge[][] = [];
  let fromFirstCorner = false;
  let open = false;
  for (const edge of ring) {
    const near = others.filter((other) => meet(zoneExtent(other), edgeExtent(edge)));
    for (const [from, to] of visibleShares(edge, near, piece)) {
      if (open && from === 0) found.at(-1)?.push(partOf(edge, from, to));
      else found.push([partOf(edge, from, to)]);
      fromFirstCorner ||= edge === ring[0] && from === 0;
      open = to === 1;
    }
    if (!uncoveredBy(near)(onEdge(edge, 1))) open = false;
  }
  // The stretches before and after the ring's first corner are one.
  if (fromFirstCorner && open && found.length > 1) found[0]?.unshift(...(found.pop() ?? []));
  return found;
}

/** Returns the visible intervals of an edge, as fractions of its length. */
function visibleShares(edge: Edge, others: readonly Zone[], piece: Mm): readonly (readonly [number, number])[] {
  if (others.length === 0) return [[0, 1]];
  const pieces = Math.max(2, Math.ceil(edgeLength(edge) / piece));
  const spans: [number, number][] = [];
  const isVisible = uncoveredAlong(edge, pieces, others);
  // Slightly inside the ends, where another zone's outline may touch and the result is undefined.
  const visibleAt = (share: number) => isVisible(Math.min(1 - 1e-6, Math.max(1e-6, share)));
  let before = visibleAt(0);
  if (before) spans.push([0, 0]);
  for (let i = 1; i <= pieces; i++) {
    const now = visibleAt(i / pieces);
    if (now !== before) {
      const cut = crossing((i - 1) / pieces, i / pieces, visibleAt, before);
      const last = spans.at(-1);
      if (now) spans.push([cut, cut]);
      else if (last) last[1] = cut;
    }
    const last = spans.at(-1);
    if (now && last) last[1] = i / pieces;
    before = now;
  }
  return spans;
}

/** Samples of a long edge that share one list of nearby zones: about a meter of wall has few neighbors. */
const CHUNK = 24;

/**
 * Returns a predicate: whether the edge is visible at a fraction of its length; tests only zones near that part of it.
 */
function uncoveredAlong(edge: Edge, pieces: number, others: readonly Zone[]): (share: number) => boolean {
  const chunks = Math.ceil(pieces / CHUNK);
  const tests = Array.from({ length: chunks }, (_, i) => {
    const extent = edgeExtent(partOf(edge, i / chunks, (i + 1) / chunks));
    return uncoveredBy(others.filter((other) => meet(zoneExtent(other), extent)));
  });
  return (share) => tests[Math.min(chunks - 1, Math.floor(share * chunks))]?.(onEdge(edge, share)) ?? true;
}

function crossing(from: number, to: number, visibleAt: (share: number) => boolean, before: boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (low + high) / 2;
    if (visibleAt(middle) === before) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function partOf(edge: Edge, from: number, to: number): Edge {
  if (edge.kind === 'line') return { kind: 'line', from: onEdge(edge, from), to: onEdge(edge, to) };
  return { ...edge, start: edge.start + edge.sweep * from, sweep: edge.sweep * (to - from) };
}

const extents = new WeakMap<Zone, Extent>();

/** Returns a bounding box of the zone; around arcs it may be too large. */
export function zoneExtent(zone: Zone): Extent {
  const cached = extents.get(zone);
  if (cached) return cached;
  const extent = ringExtent(zone.outlines.flat().flatMap(cornersAbout));
  extents.set(zone, extent);
  return extent;
}

function edgeExtent(edge: Edge): Extent {
  return ringExtent(cornersAbout(edge));
}

/** Returns points whose bounding box contains an edge: the ends of a line, for an arc those of its circle's box. */
function cornersAbout(edge: Edge): readonly XY[] {
  if (edge.kind === 'line') return [edge.from, edge.to];
  const [x, y] = edge.center;
  return [
    [x - edge.radius, y - edge.radius],
    [x + edge.radius, y + edge.radius],
  ];
}

function meet(a: Extent, b: Extent): boolean {
  return a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;
}

function extentContains({ minX, minY, maxX, maxY }: Extent, [x, y]: XY): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}
