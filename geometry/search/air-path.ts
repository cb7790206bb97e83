import Flatbush from 'flatbush';
import type { LevelModel, OpeningBody, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { memoize } from '../plane/memoize.ts';
import { along, cross, distance } from '../plane/point.ts';
import { nearestOnRing, ringContains, ringsContain, signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';

/** The shortest path of air between two points of a level, around walls and through doors and passages. */
export interface AirPath {
  readonly length: Mm;
  /** The points from the first to the last, with the corners in between. */
  readonly points: readonly XY[];
}

/**
 * Returns the shortest path of air between two points. For information next to a clearance: the rules measure straight
 * through partitions. Doors count as open; windows, furniture and heights are ignored. A point within a wall starts at
 * the nearest wall face. Null if there is no path.
 */
export function airPath(model: LevelModel, from: XY, to: XY): AirPath | null {
  const air = airSpace(model);
  const start = nearestAirPoint(air, from);
  const end = nearestAirPoint(air, to);
  if (!start || !end) return null;
  return shortestPath([start, end, ...air.corners], (i, j, a, b) => air.isVisible(i - 2, j - 2, a, b));
}

/** The floors of a level and the doorways between them. */
interface AirSpace {
  readonly rooms: readonly Room[];
  readonly doorways: readonly OpeningBody[];
  /** Corners at which a path may bend. */
  readonly corners: readonly XY[];
  /**
   * Whether the straight line from a to b is free (visibility graph). `i` and `j` are corner indices, negative for
   * other points.
   */
  readonly isVisible: (i: number, j: number, a: XY, b: XY) => boolean;
}

/** A point this close to a line touches it, mm. */
const TOUCHING: Mm = 1e-6;

const airSpace: (model: LevelModel) => AirSpace = memoize((model: LevelModel): AirSpace => {
  const { rooms } = model;
  const doorways = model.openings.filter(({ opening }) => opening.kind !== 'window');
  const rings = rooms.flatMap(({ floorRings }) => floorRings);
  const barriers = [
    ...rings.flatMap((ring) => edgesOf(ring)).flatMap((edge) => withoutDoorways(edge, doorways)),
    ...doorways.flatMap(({ body }) => jambs(body)),
  ];
  const inAir = (p: XY) => isInAir(rooms, doorways, p);
  const blocked = barrierIndex(barriers);
  const visibility = new Map<number, boolean>();
  const corners = [...rings.flatMap(reflexCorners), ...doorways.flatMap(({ body }) => [...body])];
  const isFree = (a: XY, b: XY) => !blocked(a, b) && inAir(along(a, b, 0.5));
  return {
    rooms,
    doorways,
    corners,
    isVisible: (i, j, a, b) => {
      if (i < 0 || j < 0) return isFree(a, b);
      const key = Math.min(i, j) * corners.length + Math.max(i, j);
      const cached = visibility.get(key);
      if (cached !== undefined) return cached;
      const isVisible = isFree(a, b);
      visibility.set(key, isVisible);
      return isVisible;
    },
  };
});

function edgesOf(ring: Ring): (readonly [XY, XY])[] {
  return ring.map((a, i) => [a, ring[(i + 1) % ring.length] as XY] as const);
}

/** Returns the reflex corners of a floor ring, around which a path may bend. The floor is on the right of its rings. */
function reflexCorners(ring: Ring): XY[] {
  return ring.filter((p, i) => {
    const before = ring[(i + ring.length - 1) % ring.length] as XY;
    const after = ring[(i + 1) % ring.length] as XY;
    return cross(before, p, after) < 0;
  });
}

/** Returns the sides of a doorway across the wall: its body runs along the wall from the first corner to the second. */
function jambs(body: Ring): (readonly [XY, XY])[] {
  const [a, b, c, d] = body as readonly [XY, XY, XY, XY];
  return [
    [b, c],
    [d, a],
  ];
}

/** Returns a stretch of wall face minus the doorways that open in it. */
function withoutDoorways([a, b]: readonly [XY, XY], doorways: readonly OpeningBody[]): (readonly [XY, XY])[] {
  const length = distance(a, b);
  if (length === 0) return [];
  let remaining: (readonly [number, number])[] = [[0, 1]];
  for (const { body } of doorways) {
    const [p, q, r, s] = body as readonly [XY, XY, XY, XY];
    for (const [from, to] of [
      [p, q],
      [r, s],
    ] as const) {
      if (Math.abs(cross(a, b, from)) > length * FACE_TOLERANCE || Math.abs(cross(a, b, to)) > length * FACE_TOLERANCE)
        continue;
      const t = share(a, b, from);
      const u = share(a, b, to);
      remaining = remaining.flatMap(([low, high]) => cutOut(low, high, Math.min(t, u), Math.max(t, u)));
    }
  }
  return remaining.map(([low, high]) => [along(a, b, low), along(a, b, high)] as const);
}

/** The side of a doorway may be this far off the face that it opens in, mm: joining wall ends may have moved the face. */
const FACE_TOLERANCE: Mm = 15;

function share(a: XY, b: XY, p: XY): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  return ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy);
}

function cutOut(low: number, high: number, from: number, to: number): (readonly [number, number])[] {
  const parts: (readonly [number, number])[] = [
    [low, Math.min(high, from)],
    [Math.max(low, to), high],
  ];
  return parts.filter(([start, end]) => end - start > 1e-9);
}

/** Returns a predicate: whether a barrier crosses the line from a to b; touching does not count. */
function barrierIndex(barriers: readonly (readonly [XY, XY])[]): (a: XY, b: XY) => boolean {
  if (barriers.length === 0) return () => false;
  const index = new Flatbush(barriers.length);
  for (const [p, q] of barriers) index.add(...box(p, q));
  index.finish();
  return (a, b) => index.search(...box(a, b)).some((i) => isAcross(a, b, barriers[i] as readonly [XY, XY]));
}

function box(a: XY, b: XY): [Mm, Mm, Mm, Mm] {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1])];
}

function isAcross(a: XY, b: XY, [p, q]: readonly [XY, XY]): boolean {
  const path = distance(a, b) * TOUCHING;
  const wall = distance(p, q) * TOUCHING;
  const [sp, sq] = [cross(a, b, p), cross(a, b, q)];
  const [sa, sb] = [cross(p, q, a), cross(p, q, b)];
  return opposite(sp, sq, path) && opposite(sa, sb, wall);
}

function opposite(s: number, t: number, slack: number): boolean {
  return (s > slack && t < -slack) || (s < -slack && t > slack);
}

function isInAir(rooms: readonly Room[], doorways: readonly OpeningBody[], p: XY): boolean {
  if (rooms.some(({ floorRings }) => ringsContain(floorRings, p) || floorRings.some((ring) => isOn(ring, p))))
    return true;
  return doorways.some(({ body }) => ringContains(body, p) || isOn(body, p));
}

function isOn(ring: Ring, p: XY): boolean {
  return distance(nearestOnRing(p, ring), p) <= TOUCHING;
}

/** Returns the point itself, or the nearest floor boundary point if it is within a wall or outdoors. */
function nearestAirPoint({ rooms, doorways }: AirSpace, p: XY): XY | null {
  if (isInAir(rooms, doorways, p)) return p;
  const faces = rooms.flatMap(({ floorRings }) => floorRings.filter((ring) => signedArea(ring) !== 0));
  let best: XY | null = null;
  for (const ring of faces) {
    const q = nearestOnRing(p, ring);
    if (!best || distance(p, q) < distance(p, best)) best = q;
  }
  return best;
}

/** Dijkstra's algorithm (1959) on the visibility graph, from the first point to the second. */
function shortestPath(
  points: readonly XY[],
  isVisible: (i: number, j: number, a: XY, b: XY) => boolean,
): AirPath | null {
  const far = new Float64Array(points.length).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(points.length).fill(-1);
  const done = new Uint8Array(points.length);
  far[0] = 0;
  for (;;) {
    let next = -1;
    for (let i = 0; i < points.length; i++) {
      if (!done[i] && (next < 0 || (far[i] as number) < (far[next] as number))) next = i;
    }
    if (next < 0 || far[next] === Number.POSITIVE_INFINITY) return null;
    if (next === 1) break;
    done[next] = 1;
    const here = points[next] as XY;
    for (let i = 1; i < points.length; i++) {
      if (done[i]) continue;
      const there = points[i] as XY;
      const length = (far[next] as number) + distance(here, there);
      if (length >= (far[i] as number) || !isVisible(next, i, here, there)) continue;
      far[i] = length;
      from[i] = next;
    }
  }
  const path: XY[] = [];
  for (let i = 1; i >= 0; i = from[i] as number) path.unshift(points[i] as XY);
  return { length: far[1] as number, points: path };
}
