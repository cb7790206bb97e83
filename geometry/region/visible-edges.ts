/** Outlines for drawing: of zones of one rule that overlap, only what is seen of them. Arcs stay arcs. */

import type { Edge } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/body.ts';
import { along } from '../plane/point.ts';
import type { RuleId } from '../rules/types.ts';
import { arcRingsContain } from './nearest.ts';
import type { Zone } from './types.ts';

/** Edges are looked at in pieces of this length, mm: a stretch that shows for less may be missed. For drawing only. */
const PIECE: Mm = 40;
/** Halvings by which the end of a visible stretch is found: 40 mm to a hundredth of a mm. */
const HALVINGS = 12;

/** Joined stretches of a zone's outline, each starting where the one before ends. */
export type Stretch = readonly Edge[];

/**
 * The parts of each zone's outline that do not lie inside another zone of its rule, in the order of the zones. A zone that is
 * covered by others has none. Zones keep their objects over an edit that leaves them alone: only those with a new neighbour
 * are worked out anew.
 * @param piece mm; coarser than usual while a hand pulls at the plan: what was worked out finer already is taken as it is
 */
export function visibleEdges(zones: readonly Zone[], piece: Mm = PIECE): ReadonlyMap<Zone, readonly Stretch[]> {
  const nearOf = neighbours(zones);
  return new Map(zones.map((zone) => [zone, seenOf(zone, nearOf(zone), piece)]));
}

interface Seen {
  readonly others: readonly Zone[];
  readonly piece: Mm;
  readonly stretches: readonly Stretch[];
}
const seenBefore = new WeakMap<Zone, Seen>();

function seenOf(zone: Zone, others: readonly Zone[], piece: Mm): readonly Stretch[] {
  const before = seenBefore.get(zone);
  const same = before?.others.length === others.length && before.others.every((other, i) => other === others[i]);
  if (before && same && before.piece <= piece) return before.stretches;
  const seen = zone.outlines.flatMap((ring) => stretches(ring, others, piece));
  seenBefore.set(zone, { others, piece, stretches: seen });
  return seen;
}

/** Whether a point of the zone's outline shows: no other zone of the rule covers it. */
export function coverOf(zone: Zone, zones: readonly Zone[]): (p: XY) => boolean {
  return coverBy(neighbours(zones.filter(({ rule }) => rule === zone.rule))(zone));
}

/** The other zones of its rule that may cover something of a zone, in the order of their list. */
function neighbours(zones: readonly Zone[]): (zone: Zone) => readonly Zone[] {
  const ofRule = new Map<RuleId, Row>();
  zones.forEach((zone, place) => {
    const row = ofRule.get(zone.rule) ?? { standing: [], widest: 0 };
    const extent = zoneExtent(zone);
    row.standing.push({ zone, place, extent });
    row.widest = Math.max(row.widest, extent.maxX - extent.minX);
    ofRule.set(zone.rule, row);
  });
  for (const { standing } of ofRule.values()) standing.sort((a, b) => a.extent.minX - b.extent.minX);
  return (zone) => {
    const { standing, widest } = ofRule.get(zone.rule) ?? { standing: [], widest: 0 };
    const own = zoneExtent(zone);
    const near: Standing[] = [];
    for (let k = firstFrom(standing, own.minX - widest); k < standing.length; k++) {
      const other = standing[k] as Standing;
      if (other.extent.minX >= own.maxX) break;
      if (other.zone !== zone && meet(other.extent, own)) near.push(other);
    }
    return near.sort((a, b) => a.place - b.place).map((other) => other.zone);
  };
}

/** The zones of a rule by their left edges. */
interface Row {
  readonly standing: Standing[];
  widest: Mm;
}
interface Standing {
  readonly zone: Zone;
  readonly place: number;
  readonly extent: Extent;
}

/** The first whose left edge is at `least` or right of it. */
function firstFrom(standing: readonly Standing[], least: Mm): number {
  let [low, high] = [0, standing.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((standing[middle] as Standing).extent.minX < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

function coverBy(others: readonly Zone[]): (p: XY) => boolean {
  return (p) => !others.some((other) => holds(zoneExtent(other), p) && arcRingsContain(other.outlines, p));
}

/** The point of an edge at a share of its way, 0 to 1. */
export function onEdge(edge: Edge, share: number): XY {
  if (edge.kind === 'line') return along(edge.from, edge.to, share);
  const angle = edge.start + edge.sweep * share;
  return [edge.center[0] + edge.radius * Math.cos(angle), edge.center[1] + edge.radius * Math.sin(angle)];
}

/** Length of an edge, mm. */
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
    if (!coverBy(near)(onEdge(edge, 1))) open = false;
  }
  // What shows on both sides of the ring's first corner is one stretch.
  if (fromFirstCorner && open && found.length > 1) found[0]?.unshift(...(found.pop() ?? []));
  return found;
}

/** Where along an edge it shows, as shares of its way. */
function visibleShares(edge: Edge, others: readonly Zone[], piece: Mm): readonly (readonly [number, number])[] {
  if (others.length === 0) return [[0, 1]];
  const pieces = Math.max(2, Math.ceil(edgeLength(edge) / piece));
  const spans: [number, number][] = [];
  const isSeen = coverAlong(edge, pieces, others);
  // Just within the ends: there another zone's outline may touch, and either answer would be right.
  const seenAt = (share: number) => isSeen(Math.min(1 - 1e-6, Math.max(1e-6, share)));
  let before = seenAt(0);
  if (before) spans.push([0, 0]);
  for (let i = 1; i <= pieces; i++) {
    const now = seenAt(i / pieces);
    if (now !== before) {
      const cut = crossing((i - 1) / pieces, i / pieces, seenAt, before);
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

/** Pieces of a long edge that are asked about the same zones: a metre or so of a wall has few neighbours. */
const CHUNK = 24;

/** Whether the edge shows at a share of its way: asked only of the zones that are near that stretch of it. */
function coverAlong(edge: Edge, pieces: number, others: readonly Zone[]): (share: number) => boolean {
  const chunks = Math.ceil(pieces / CHUNK);
  const covers = Array.from({ length: chunks }, (_, i) => {
    const extent = edgeExtent(partOf(edge, i / chunks, (i + 1) / chunks));
    return coverBy(others.filter((other) => meet(zoneExtent(other), extent)));
  });
  return (share) => covers[Math.min(chunks - 1, Math.floor(share * chunks))]?.(onEdge(edge, share)) ?? true;
}

function crossing(from: number, to: number, seenAt: (share: number) => boolean, seenBefore: boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (seenAt(middle) === seenBefore) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function partOf(edge: Edge, from: number, to: number): Edge {
  if (edge.kind === 'line') return { kind: 'line', from: onEdge(edge, from), to: onEdge(edge, to) };
  return { ...edge, start: edge.start + edge.sweep * from, sweep: edge.sweep * (to - from) };
}

const extents = new WeakMap<Zone, Extent>();

/** A rectangle that holds the zone; around arcs it may be too large. */
export function zoneExtent(zone: Zone): Extent {
  const known = extents.get(zone);
  if (known) return known;
  const extent = ringExtent(zone.outlines.flat().flatMap(cornersAbout));
  extents.set(zone, extent);
  return extent;
}

function edgeExtent(edge: Edge): Extent {
  return ringExtent(cornersAbout(edge));
}

/** Points whose rectangle holds an edge: the ends of a line, of an arc what its circle reaches. */
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

function holds({ minX, minY, maxX, maxY }: Extent, [x, y]: XY): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}
