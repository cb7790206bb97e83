import type { Mm, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { distance } from '../plane/point.ts';
import type { FloorPlan } from './floor-edges.ts';
import type { Glass, Sheaf } from './glass.ts';
import { type Edge, edgeFrom, JAMB, turned } from './light-edges.ts';

/** A limit of height on the way: beams pass over or under an edge that is not the glass. */
export interface HeightLimit {
  readonly edge: Edge;
  /** How far below the limit the detector is, mm. */
  readonly drop: Mm;
  readonly bound: 'below' | 'above';
}

/** Light between two corners, from one edge to another, in directions k0 to k1. Convex but for its ends. */
export interface Strip {
  readonly k0: number;
  readonly k1: number;
  readonly left: XY;
  readonly right: XY;
  readonly from: Edge;
  /** Null: it ends at `far`, the greatest y. */
  readonly to: Edge | null;
  readonly limits: readonly HeightLimit[];
  /** The sides of the opening that it is in; none in a room. */
  readonly within: readonly Edge[];
}

/** Light that enters a space through an edge between two corners. */
interface Beam {
  readonly k0: number;
  readonly k1: number;
  readonly left: XY;
  readonly right: XY;
  readonly from: Edge;
  readonly limits: readonly HeightLimit[];
  readonly depth: number;
}

/** What the tracing of one glass shares. */
export interface Scene {
  readonly glass: Glass;
  readonly plan: FloorPlan;
  /** Edges of the floor of a room, and of an opening with its jambs. */
  readonly roomEdges: (room: number) => readonly Edge[];
  readonly doorEdges: (opening: number) => readonly Edge[];
  /** The openings whose bodies overlap that of an opening. */
  readonly overlapping: (opening: number) => readonly number[];
  /** The four sides of an opening's body. */
  readonly doorSides: (opening: number) => readonly Edge[];
  /** The faces of walls outdoors in front of the glass, seen from it: x as in the glass, y away from the house. */
  readonly outdoors: readonly Edge[];
  /** The limits that an opening sets to light that goes through it, by the edges where it enters and leaves. */
  readonly limitsOf: (opening: number, enters: Edge, leaves: Edge) => readonly HeightLimit[];
}

/** Light through more openings than this one after the other is not followed. */
const MOST_OPENINGS = 24;
/** More strips than this in the light of one opening are not followed. */
const MOST_STRIPS = 20_000;
/** A strip narrower than this is not lit, mm: 1/20 of the tolerance of a limit. */
const NARROWEST: Mm = 1e-6;
/** A shorter edge of a floor at an opening is the side of another wall, mm. */
const NARROWEST_FLOOR: Mm = 1;
/** Rounding of a depth, mm. */
const ROUNDING: Mm = 1e-6;
/** Two directions that differ by less are one. */
const SAME_DIRECTION = 1e-12;
/** Nothing is wider than this in front of the glass, mm. */
const BEFORE: Mm = 0.01;

/** Thrown when a level is too large for its sunlight to be computed. */
export class TooMuchLight extends Error {}

/**
 * Calls back with every strip of light that enters through a glass in directions k0 to k1, no farther than `far` from its inner face.
 * Between two strips of one place there is nothing but walls.
 */
export function traceBeams(
  scene: Scene,
  opening: number,
  { k0, k1 }: Sheaf,
  far: Mm,
  found: (strip: Strip) => void,
): void {
  const { thickness, width } = scene.glass;
  const [left, right]: [XY, XY] = [
    [0, -thickness],
    [width, -thickness],
  ];
  const from = edgeFrom([0, -thickness - BEFORE], [width, -thickness - BEFORE], [opening], JAMB);
  const tracer = new Tracer(scene, far, found);
  tracer.fromOutdoors({ k0, k1, left, right, from, limits: [], depth: 0 }, opening);
}

class Tracer {
  private readonly scene: Scene;
  private readonly far: Mm;
  private readonly found: (strip: Strip) => void;
  private strips = 0;

  constructor(scene: Scene, far: Mm, found: (strip: Strip) => void) {
    this.scene = scene;
    this.far = far;
    this.found = found;
  }

  /**
   * Takes the part of a beam that no wall outdoors stands in the way of: it is followed back toward the sun, where y runs the other way.
   */
  fromOutdoors(beam: Beam, opening: number): void {
    const { outdoors } = this.scene;
    if (outdoors.length === 0) {
      this.throughDoor(beam, opening);
      return;
    }
    const far = 1 + Math.max(...outdoors.map(({ a, b }) => Math.max(a[1], b[1])));
    const { k0, k1, left, right } = beam;
    const from = edgeFrom(turned(left), turned(right), [], JAMB);
    this.split(
      { ...beam, k0: -k1, k1: -k0, left: turned(left), right: turned(right), from },
      outdoors,
      (edge, k) => edge.nx * k + edge.ny > 0,
      (strip) => {
        if (strip.to) return;
        const lit = { k0: -strip.k1, k1: -strip.k0, left: turned(strip.left), right: turned(strip.right) };
        this.throughDoor({ ...beam, ...lit }, opening);
      },
      far,
    );
  }

  /** `passed`: the openings whose bodies the beam has come through, one in the other, since it left a room or the outdoors. */
  private throughDoor(beam: Beam, opening: number, passed: readonly number[] = []): void {
    if (beam.depth > MOST_OPENINGS) throw new TooMuchLight('light through too many openings');
    const edges = this.scene.doorEdges(opening);
    const isGlass = beam.depth === 0 && passed.length === 0;
    // Floors are entered here, and left in a room.
    this.split(
      beam,
      edges,
      (edge, k) => edge.room === JAMB || edge.nx * k + edge.ny > 0,
      (strip) => {
        const { to } = strip;
        if (!isGlass) this.found({ ...strip, within: this.scene.doorSides(opening) });
        if (!to) this.intoOverlapping({ ...beam, ...strip, from: beam.from }, [...passed, opening]);
        if (!to || to.room < 0) return;
        // Where it came into this body is not known of a beam from another one: at the floor it is lowest, and the head stops it least.
        const limits = isGlass ? [] : this.scene.limitsOf(opening, passed.length > 0 ? to : beam.from, to);
        this.throughRoom({ ...beam, ...strip, from: to, limits: [...beam.limits, ...limits] });
      },
    );
  }

  /** Takes light that met no floor at an opening into those that overlap it, where two walls meet at a small angle or cross. */
  private intoOverlapping(beam: Beam, passed: readonly number[]): void {
    for (const other of this.scene.overlapping(passed.at(-1) ?? -1))
      if (!passed.includes(other)) this.throughDoor(beam, other, passed);
  }

  private throughRoom(beam: Beam): void {
    const edges = this.scene.roomEdges(beam.from.room);
    this.split(
      beam,
      edges,
      (edge, k) => edge.nx * k + edge.ny < 0,
      (strip) => {
        this.found(strip);
        const { to } = strip;
        for (const opening of to?.openings ?? []) {
          if (!to || !this.leadsOn(opening, (strip.k0 + strip.k1) / 2)) continue;
          this.throughDoor({ ...beam, ...strip, from: to, depth: beam.depth + 1 }, opening);
        }
      },
    );
  }

  /** Returns whether there is a floor behind an opening, or another opening in it. */
  private leadsOn(opening: number, k: number): boolean {
    const isFloor = ({ room, a, b, nx, ny }: Edge) =>
      room !== JAMB && nx * k + ny > 0 && distance(a, b) > NARROWEST_FLOOR;
    return this.scene.overlapping(opening).length > 0 || this.scene.doorEdges(opening).some(isFloor);
  }

  /**
   * Splits a beam by what it meets first. Between two directions in which no two corners are behind each other the order of the
   * corners stays, and with it what each strip meets.
   */
  private split(
    { k0, k1, left, right, from, limits }: Beam,
    edges: readonly Edge[],
    stops: (edge: Edge, k: number) => boolean,
    found: (strip: Strip) => void,
    far: Mm = this.far,
  ): void {
    const near = Math.min(from.a[1], from.b[1]) - ROUNDING;
    const ahead = edges.filter(({ a, b }) => Math.max(a[1], b[1]) > near && Math.min(a[1], b[1]) < far);
    const corners = cornersIn({ k0, k1, left, right, near }, ahead, far);
    const stopsAt = eventsOf(corners, k0, k1);
    const runs = new Map<number, { i: number; j: number; edge: number; k0: number; k1: number }>();
    const flush = ({ i, j, edge, k0, k1 }: { i: number; j: number; edge: number; k0: number; k1: number }) => {
      if (++this.strips > MOST_STRIPS) throw new TooMuchLight('too many corners in the light');
      found({
        k0,
        k1,
        left: corners[i] as XY,
        right: corners[j] as XY,
        from,
        to: edge < 0 ? null : (ahead[edge] as Edge),
        limits,
        within: [],
      });
    };
    for (let n = 0; n + 1 < stopsAt.length; n++) {
      const [ka, kb] = [stopsAt[n] as number, stopsAt[n + 1] as number];
      for (const { i, j, edge } of stripsAt((ka + kb) / 2, corners, ahead, from, far, stops)) {
        const key = (i * corners.length + j) * (ahead.length + 1) + edge + 1;
        const run = runs.get(key);
        if (run?.k1 === ka) run.k1 = kb;
        else {
          if (run) flush(run);
          runs.set(key, { i, j, edge, k0: ka, k1: kb });
        }
      }
    }
    for (const run of runs.values()) flush(run);
  }
}

/** Returns the corners that may be in a beam: its own two first, then those of edges, and where edges reach `far`. */
function cornersIn(
  { k0, k1, left, right, near }: { k0: number; k1: number; left: XY; right: XY; near: Mm },
  edges: readonly Edge[],
  far: Mm,
): XY[] {
  const corners: XY[] = [left, right];
  const seen = new Set<number>();
  const add = (p: XY) => {
    const key = p[0] * 1_000_003 + p[1];
    if (p[1] <= near || p[1] > far || seen.has(key)) return;
    seen.add(key);
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

/** Returns the directions between k0 and k1 in which two corners are behind each other, and k0 and k1. */
function eventsOf(corners: readonly XY[], k0: number, k1: number): number[] {
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

/** Returns what light in one direction meets between the corners, from left to right. */
function stripsAt(
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
