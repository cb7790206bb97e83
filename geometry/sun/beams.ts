import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { FloorPlan } from './floor-edges.ts';
import { entryOf, type Glass, type Sheaf } from './glass.ts';
import { type Edge, edgeFrom, JAMB, turned } from './light-edges.ts';
import { cornersIn, eventsOf, ROUNDING, stripsAt } from './strips.ts';

/** A height limit along the beam: light must pass over or under an edge other than the glass. */
export interface HeightLimit {
  readonly edge: Edge;
  /** How far below the limit the detector is, mm. */
  readonly drop: Mm;
  readonly bound: 'below' | 'above';
}

/** Light between two corners, from one edge to another, in directions k0 to k1. Convex except for its ends. */
export interface Strip {
  readonly k0: number;
  readonly k1: number;
  readonly left: XY;
  readonly right: XY;
  readonly from: Edge;
  /** Null: the strip ends at `far`, the greatest y. */
  readonly to: Edge | null;
  readonly limits: readonly HeightLimit[];
  /** The sides of the opening that the strip is in; empty in a room. */
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

/** Data shared while the light of one glass is traced. */
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
  /** Whether an opening is open anywhere at the heights of the detector; else it is wall there. */
  readonly isOpenAtDetector: (opening: number) => boolean;
  /** The faces of walls outdoors in front of the glass, seen from it: x as in the glass, y away from the house. */
  readonly outdoors: readonly Edge[];
  /** The height limits that an opening sets for light through it, given the edges where the light enters and leaves. */
  readonly limitsOf: (opening: number, enters: Edge, leaves: Edge) => readonly HeightLimit[];
}

/** Light through more than this many openings in sequence is not followed. */
const MOST_OPENINGS = 24;
/** More strips than this in the light of one opening are not followed. */
const MOST_STRIPS = 20_000;
/** A shorter edge of a floor at an opening is the side of another wall, mm. */
const NARROWEST_FLOOR: Mm = 1;
/** Light starts on an edge this far in front of the outer face of the glass, mm. */
const BEFORE: Mm = 0.01;

/** Thrown when a level is too large for its sunlight to be computed. */
export class TooMuchLight extends Error {}

/**
 * Calls `found` with every strip of light that enters through a glass in directions k0 to k1, no farther than `far` from its inner face.
 * Between two strips at one place there is nothing but walls.
 */
export function traceBeams(
  scene: Scene,
  opening: number,
  { k0, k1 }: Sheaf,
  far: Mm,
  found: (strip: Strip) => void,
): void {
  const { thickness, width } = scene.glass;
  const [first, last] = entryOf(scene.glass, k0, k1);
  const [left, right]: [XY, XY] = [
    [first, -thickness],
    [last, -thickness],
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
   * Passes on the part of a beam that no wall outdoors blocks. The beam is traced back toward the sun, where y has the opposite direction.
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

  /** `passed` holds the openings in one another whose bodies the beam has passed through since it left a room or the outdoors. */
  private throughDoor(beam: Beam, opening: number, passed: readonly number[] = []): void {
    if (beam.depth > MOST_OPENINGS) throw new TooMuchLight('light through too many openings');
    const edges = this.scene.doorEdges(opening);
    const isGlass = beam.depth === 0 && passed.length === 0;
    const isFloor = !isGlass && this.scene.isOpenAtDetector(opening);
    // Here the beam enters floors; in a room it leaves them.
    this.split(
      beam,
      edges,
      (edge, k) => edge.room === JAMB || edge.nx * k + edge.ny > 0,
      (strip) => {
        const { to } = strip;
        if (isFloor) this.found({ ...strip, within: this.scene.doorSides(opening) });
        if (!to) this.intoOverlapping({ ...beam, ...strip, from: beam.from }, [...passed, opening]);
        if (!to || to.room < 0) return;
        // A beam from an overlapping opening has no known entry into this body. At the floor it is lowest, where the head blocks it least.
        const limits = isGlass ? [] : this.scene.limitsOf(opening, passed.length > 0 ? to : beam.from, to);
        this.throughRoom({ ...beam, ...strip, from: to, limits: [...beam.limits, ...limits] });
      },
    );
  }

  /** Follows light that met no floor at an opening into the openings that overlap it, where two walls meet at a small angle or cross. */
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

  /** Returns whether there is a floor behind an opening, or another opening that overlaps it. */
  private leadsOn(opening: number, k: number): boolean {
    const isFloor = ({ room, a, b, nx, ny }: Edge) =>
      room !== JAMB && nx * k + ny > 0 && distance(a, b) > NARROWEST_FLOOR;
    return this.scene.overlapping(opening).length > 0 || this.scene.doorEdges(opening).some(isFloor);
  }

  /**
   * Splits a beam by the edges that it meets first. Between two directions in which no two corners are behind each other, the order of the
   * corners stays the same, and so does the edge that each strip meets.
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
