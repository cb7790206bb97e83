import { type Extent, ringExtent } from './body.ts';
import type { Mm, XY } from './plan/model.ts';
import { along } from './point.ts';
import type { ArcRing, Edge, LevelRegion, Zone } from './region/types.ts';
import { ringContains, ringsContain } from './ring.ts';

/** The part of a zone's outline that one sees when zones of one rule are painted as one area. For drawing only. */
export interface ZoneEdge {
  readonly zone: Zone;
  /** Open lines along the outline, on the page. Arcs as chords of at most 2 degrees: 1.3 mm off at a radius of 84 in. */
  readonly runs: readonly (readonly XY[])[];
  /** The longest run on the floor of a room that is not out as a whole: where the rule's name belongs; null for none. */
  readonly nameRun: readonly XY[] | null;
}

/** Straight edges are looked at in pieces of this length, mm. */
const PIECE: Mm = 60;
const ARC_PIECE = (2 * Math.PI) / 180;

interface Sampled {
  readonly zone: Zone;
  readonly rings: readonly (readonly XY[])[];
  readonly extent: Extent;
}

/** The outlines of all zones without what lies inside another zone of the same rule. Same order as the zones. */
export function zoneEdges(region: LevelRegion): readonly ZoneEdge[] {
  const sampled = region.zones.map(sampledZone);
  const floors = region.rooms.filter(({ barred }) => !barred).map(({ room }) => room.floorRings);
  const onFloor = (p: XY) => floors.some((rings) => ringsContain(rings, p));
  return sampled.map((own) => {
    const others = sampled.filter(
      (each) => each !== own && each.zone.rule === own.zone.rule && meet(each.extent, own.extent),
    );
    const seen = (p: XY) => !others.some((other) => contains(other, p));
    const runs = own.rings.flatMap((ring) => visibleRuns(ring, seen));
    const named = runs.flatMap((run) => visibleRuns(run, onFloor, false));
    return { zone: own.zone, runs, nameRun: longest(named) };
  });
}

/** Length of an open line, mm. */
export function runLength(points: readonly XY[]): Mm {
  let sum = 0;
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before) sum += Math.hypot(point[0] - before[0], point[1] - before[1]);
  });
  return sum;
}

function sampledZone(zone: Zone): Sampled {
  const rings = zone.outlines.map(sampledRing).filter((ring) => ring.length > 2);
  return { zone, rings, extent: ringExtent(rings.flat()) };
}

function sampledRing(ring: ArcRing): readonly XY[] {
  return ring.flatMap(sampledEdge);
}

/** From the edge's start, without its end. */
function sampledEdge(edge: Edge): readonly XY[] {
  if (edge.kind === 'line') {
    const { from, to } = edge;
    const pieces = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / PIECE));
    return Array.from({ length: pieces }, (_, i) => along(from, to, i / pieces));
  }
  const { center, radius, start, sweep } = edge;
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / ARC_PIECE));
  return Array.from({ length: pieces }, (_, i): XY => {
    const angle = start + (sweep * i) / pieces;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
}

/** Inside by more than a hair: zones that only share an edge do not hide it from one another. */
function contains({ rings, extent }: Sampled, p: XY): boolean {
  if (p[0] <= extent.minX || p[0] >= extent.maxX || p[1] <= extent.minY || p[1] >= extent.maxY) return false;
  return rings.some((ring) => ringContains(ring, p));
}

/** The stretches of a line on which `seen` holds, cut to a tenth of a piece. */
function visibleRuns(points: readonly XY[], seen: (p: XY) => boolean, closed = true): readonly (readonly XY[])[] {
  const line = closed ? [...points, points[0] as XY] : points;
  const runs: XY[][] = [];
  let run: XY[] | null = null;
  let before: XY | null = null;
  let beforeSeen = false;
  for (const point of line) {
    const now = seen(point);
    if (before && now !== beforeSeen) {
      const cut = crossing(before, point, seen, beforeSeen);
      if (now) run = [cut];
      else run?.push(cut);
    }
    if (now) {
      run ??= [];
      run.push(point);
    } else if (run) {
      runs.push(run);
      run = null;
    }
    before = point;
    beforeSeen = now;
  }
  if (run) runs.push(run);
  return closed ? joinedEnds(runs) : runs;
}

/** A run that goes on over the ring's first point is one run. */
function joinedEnds(runs: readonly XY[][]): readonly (readonly XY[])[] {
  const [first] = runs;
  const last = runs.at(-1);
  if (!first || !last || first === last) return runs;
  const [end, start] = [last.at(-1), first[0]];
  if (!end || !start || end[0] !== start[0] || end[1] !== start[1]) return runs;
  return [[...last, ...first.slice(1)], ...runs.slice(1, -1)];
}

function crossing(a: XY, b: XY, seen: (p: XY) => boolean, aSeen: boolean): XY {
  let [low, high] = [0, 1];
  for (let i = 0; i < 4; i++) {
    const middle = (low + high) / 2;
    if (seen(along(a, b, middle)) === aSeen) low = middle;
    else high = middle;
  }
  return along(a, b, (low + high) / 2);
}

function longest(runs: readonly (readonly XY[])[]): readonly XY[] | null {
  let best: readonly XY[] | null = null;
  let most = 0;
  for (const run of runs) {
    const length = runLength(run);
    if (length > most) {
      most = length;
      best = run;
    }
  }
  return best;
}

function meet(a: Extent, b: Extent): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
