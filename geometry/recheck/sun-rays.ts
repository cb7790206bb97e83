import type { Mm, Opening, Plan, XY } from '../plan/model.ts';
import { type Convex, convexOf, crossing } from './half-planes.ts';
import { apart, dot, extentOf, extentsMeet, plus, quarter, vector } from './plane.ts';
import { sunPlace } from './sun-place.ts';
import type { WallLayout } from './wall-layout.ts';

/** Radius of the sun's disc, degrees. */
const DISC = 0.267;
/** Altitude below which the sun does not count if the site does not give one, degrees. */
const USUAL_HORIZON = 3;
/** Time between two rays of one window, ms, and the greatest number of instants. */
const EVERY = 120_000;
const MOST_INSTANTS = 8000;
/** Every 32nd instant is searched first. */
const FEW = 32;
/** Distance between two rays of one instant through one window, mm. */
const ASIDE: Mm = 100;
/** Rounding, mm. */
const TOUCH: Mm = 1e-3;
const RADIANS = Math.PI / 180;

/** The middle of the disc and its edge. */
const DISC_POINTS: readonly (readonly [number, number])[] = [
  [0, 0],
  ...Array.from({ length: 8 }, (_, i) => [Math.cos((i * Math.PI) / 4), Math.sin((i * Math.PI) / 4)] as const),
];

/** Where and when the sun shines. */
export interface Exposure {
  readonly latitude: number;
  readonly longitude: number;
  readonly start: number;
  readonly end: number;
  readonly north: number;
  readonly horizon: number;
}

/** Returns place and times of a plan, up to the planned pick-up while none is recorded; null while any is missing. */
export function exposureOf({ site, visit }: Plan): Exposure | null {
  const { latitude, longitude, north, horizon = USUAL_HORIZON } = site;
  const until = visit.end ?? visit.plannedEnd ?? null;
  if (latitude === null || longitude === null || visit.start === null || until === null) return null;
  return { latitude, longitude, north, horizon, start: Date.parse(visit.start), end: Date.parse(until) };
}

/** Incoming light: directed along `way` on the plan, falling `fall` mm per mm. */
interface Beam {
  readonly way: XY;
  readonly fall: number;
  /** The altitude of the middle of the sun, degrees. */
  readonly altitude: number;
}

type Hole = WallLayout['holes'][number];

/** One side of a hole: from the outer face to the inner one. */
interface Pane {
  readonly hole: Hole;
  /** The sun below this altitude is hidden, degrees. */
  readonly obstruction: number;
  readonly outer: XY;
  readonly inner: XY;
  /** Unit vectors along the wall and into the room. */
  readonly along: XY;
  readonly inward: XY;
  readonly width: Mm;
  readonly thickness: Mm;
}

/** Returns whether north has been entered: 0 is also the default of a new plan. */
export const hasNorth = ({ site }: Plan): boolean => site.northAnswered !== false;

/** Returns whether an opening lets light in while closed. */
export const hasGlass = ({ glazed, kind }: Opening): boolean => glazed ?? kind !== 'door';

/** The distance of the nearest light from a point, and the hole that the light comes through. */
export interface NearestSun {
  readonly hole: Hole;
  readonly distance: Mm;
}

/**
 * Returns the distance, in plan, from a point to the nearest place that a ray of sun through one of the holes crosses at one of the heights;
 * null if there is none. Single rays: from the middle and the edge of the disc, every two minutes, every 100 mm along the opening.
 */
export function nearestSun(
  layout: WallLayout,
  holes: readonly Hole[],
  exposure: Exposure,
  at: XY,
  heights: readonly Mm[],
): NearestSun | null {
  const panes = holes.flatMap((hole) => panesOf(hole).filter((pane) => leadsIndoors(layout, pane)));
  const search = new Search(layout, at);
  for (const beam of panes.length > 0 ? beamsOf(exposure) : []) {
    for (const pane of panes) {
      if (beam.altitude >= pane.obstruction) for (const z of heights) search.through(pane, beam, z);
    }
  }
  return search.nearest;
}

/** The last exposure with its beams, which are the same for every detector and every hole. */
let lastBeams: { readonly exposure: Exposure; readonly beams: readonly Beam[] } | null = null;

/** Returns the light of the whole exposure. A sample of all its times comes first, so that a search soon has a near place to compare with. */
function beamsOf(exposure: Exposure): readonly Beam[] {
  if (lastBeams && JSON.stringify(lastBeams.exposure) === JSON.stringify(exposure)) return lastBeams.beams;
  const count = Math.min(MOST_INSTANTS, Math.max(1, Math.ceil((exposure.end - exposure.start) / EVERY)));
  const instants = Array.from({ length: count + 1 }, (_, i) => i).sort(
    (i, j) => Number(i % FEW !== 0) - Number(j % FEW !== 0) || i - j,
  );
  const beams = instants.flatMap((i) =>
    beamsAt(exposure, exposure.start + ((exposure.end - exposure.start) * i) / count),
  );
  lastBeams = { exposure, beams };
  return beams;
}

function beamsAt({ latitude, longitude, north, horizon }: Exposure, instant: number): readonly Beam[] {
  const sun = sunPlace(instant, latitude, longitude);
  if (sun.altitude < horizon) return [];
  return DISC_POINTS.map(([across, up]) => {
    const bearing = (sun.azimuth + north + (across * DISC) / Math.cos(sun.altitude * RADIANS)) * RADIANS;
    return {
      way: [-Math.sin(bearing), Math.cos(bearing)],
      fall: Math.tan((sun.altitude + up * DISC) * RADIANS),
      altitude: sun.altitude,
    };
  });
}

/** Returns the panes of a hole. If a thicker wall runs along its own wall, adds those of its own wall, where the thicker wall can block light. */
function panesOf(hole: Hole): readonly Pane[] {
  const { shade } = hole.opening;
  if (shade === 'covered' || shade === 'well') return [];
  return [hole.ring, ...(hole.own ? [hole.own] : [])].flatMap((ring) => panesIn(hole, ring));
}

function panesIn(hole: Hole, ring: Hole['ring']): readonly Pane[] {
  const { shade } = hole.opening;
  const [a, b, c, d] = ring as readonly [XY, XY, XY, XY];
  const thickness = apart(a, d);
  const obstruction = (typeof shade === 'object' && shade?.obstruction) || 0;
  return (
    [
      [a, b, d],
      [c, d, b],
    ] as const
  ).map(([outer, end, inner]) => {
    const width = apart(outer, end);
    const along: XY = [(end[0] - outer[0]) / width, (end[1] - outer[1]) / width];
    const [x, y] = quarter(along);
    const inward: XY = [-x, -y];
    return { hole, obstruction, outer, inner, along, inward, width, thickness };
  });
}

/** Returns whether there is a floor behind a hole. */
function leadsIndoors(layout: WallLayout, { inner, along, inward, width }: Pane): boolean {
  return [0.02, 0.25, 0.5, 0.75, 0.98].some(
    (share) => layout.roomAt(plus(plus(inner, along, width * share), inward, 1)) !== null,
  );
}

/** A wall or a joint. */
interface Barrier {
  readonly convex: Convex;
  /** Whether no opening inside the house is in it. */
  readonly isSolid: boolean;
}

/** A ray of light. Distances along it are measured from the inner face of a pane. */
interface Ray {
  readonly start: XY;
  readonly way: XY;
  /** The position of the outer face: negative. */
  readonly outerFace: Mm;
  /** The position from which the ray is nearer to the point than the nearest light found so far. */
  readonly near: Mm;
}

/** Searches for the lit place that is nearest to a point. */
class Search {
  nearest: NearestSun | null = null;
  private readonly at: XY;
  private readonly barriers: readonly Barrier[];
  private readonly passages: readonly { readonly opening: Opening; readonly convex: Convex }[];
  /** The barrier that stopped the last stopped ray: most often it stops the next one too. */
  private lastStop: Barrier | null = null;

  constructor({ bodies, holes }: WallLayout, at: XY) {
    this.at = at;
    const inside = holes.filter(({ outside }) => !outside);
    const extents = inside.map(({ ring }) => extentOf(ring));
    this.barriers = bodies.map(({ ring }) => {
      const own = extentOf(ring);
      return { convex: convexOf(ring), isSolid: !extents.some((extent) => extentsMeet(extent, own)) };
    });
    this.passages = inside.map(({ opening, ring }) => ({ opening, convex: convexOf(ring) }));
  }

  private get least(): Mm {
    return this.nearest?.distance ?? Number.POSITIVE_INFINITY;
  }

  /** Searches along the rays of one beam through a pane, at a height `z` above the floor, mm. */
  through(pane: Pane, beam: Beam, z: Mm): void {
    const { thickness, width, inner, along } = pane;
    const cosine = dot(beam.way, pane.inward);
    if (cosine < 1e-6) return;
    const slip = (thickness * dot(beam.way, along)) / cosine;
    const [first, last] = [Math.max(0, slip), Math.min(width, width + slip)];
    const [from, to] = span(pane, beam, z, thickness / cosine, cosine);
    if (first > last || from > to || this.isFar(plus(inner, along, (first + last) / 2), beam, from, to, last - first))
      return;
    const steps = Math.max(1, Math.ceil((last - first) / ASIDE));
    for (let i = 0; i <= steps; i++) {
      const start = plus(inner, along, first + ((last - first) * i) / steps);
      const near = this.nearPart(start, beam.way, from, to);
      if (near === null) continue;
      const ray = { start, way: beam.way, outerFace: -thickness / cosine, near };
      if (this.lastStop && isStoppedBy(this.lastStop, ray)) continue;
      const stop = this.barriers.find((barrier) => isStoppedBy(barrier, ray));
      if (stop) this.lastStop = stop;
      else for (const [low, high] of this.openParts(ray, beam, z, from, to)) this.take(pane.hole, ray, low, high);
    }
  }

  /** Returns from where a part of a ray is nearer to the point than the nearest light found so far; null if no part is. */
  private nearPart(start: XY, way: XY, from: Mm, to: Mm): Mm | null {
    const toPoint = vector(start, this.at);
    const middle = dot(toPoint, way);
    const square = this.least ** 2 - Math.max(0, dot(toPoint, toPoint) - middle ** 2);
    if (!(square > 0)) return null;
    const half = Math.sqrt(square);
    return middle + half > from && middle - half < to ? Math.max(from, middle - half) : null;
  }

  private take(hole: Hole, { start, way }: Ray, low: Mm, high: Mm): void {
    const t = Math.min(high, Math.max(low, dot(vector(start, this.at), way)));
    const distance = apart(this.at, plus(start, way, t));
    if (distance < this.least) this.nearest = { hole, distance };
  }

  /** Returns whether no part of the light can be nearer than the nearest light found so far. */
  private isFar(start: XY, { way }: Beam, from: Mm, to: Mm, wide: Mm): boolean {
    const middle = plus(start, way, (from + to) / 2);
    return apart(middle, this.at) - (to - from + wide) / 2 >= this.least;
  }

  /** Returns the parts of a ray that no wall on its way shades. */
  private openParts({ start, way }: Ray, { fall }: Beam, z: Mm, from: Mm, to: Mm): readonly (readonly [Mm, Mm])[] {
    const walls = this.barriers
      .flatMap(({ convex }) => {
        const met = crossing(convex, start, way);
        return met && isThrough(met) && met[1] > TOUCH ? [met] : [];
      })
      .sort((one, two) => one[0] - two[0]);
    const holes = this.passages.flatMap(({ opening, convex }) => {
      const passed = crossing(convex, start, way);
      return passed ? [{ opening, met: passed }] : [];
    });
    const parts: [Mm, Mm][] = [];
    let [low, high] = [from, to];
    for (const [enters, leaves] of walls) {
      if (enters > low && low <= high) parts.push([low, Math.min(high, enters)]);
      const hole = holes.find(({ met }) => met[0] <= enters + TOUCH && met[1] >= leaves - TOUCH);
      if (!hole) return parts;
      // Light that is at height z at a distance t was at z + (t − enters) · fall where it entered the wall.
      high = Math.min(high, enters + (hole.opening.top - z) / fall);
      const inside = Math.max(low, enters);
      if (z >= hole.opening.bottom && inside <= Math.min(high, leaves)) parts.push([inside, Math.min(high, leaves)]);
      low = Math.max(low, leaves, leaves + (hole.opening.bottom - z) / fall);
    }
    if (low <= high) parts.push([low, high]);
    return parts;
  }
}

/** Returns whether a line passes through a wall: a wall that it only touches does not stop it. */
const isThrough = ([enters, leaves]: readonly [Mm, Mm]): boolean => leaves - enters > TOUCH;

/**
 * Returns whether a wall keeps a ray from every place nearer than the nearest light found so far: the wall is outdoors before the outer face,
 * or indoors before the first of those places, without an opening.
 */
function isStoppedBy({ convex, isSolid }: Barrier, { start, way, outerFace, near }: Ray): boolean {
  const met = crossing(convex, start, way);
  if (!met || !isThrough(met)) return false;
  const [enters, leaves] = met;
  return enters < outerFace - TOUCH || (isSolid && leaves > TOUCH && enters <= near);
}

/** Returns the interval along a ray, from the inner face, in which it is at the height z, mm; empty if the first exceeds the second. */
function span({ hole }: Pane, { fall }: Beam, z: Mm, thick: Mm, cosine: number): [Mm, Mm] {
  const { bottom, top, shade } = hole.opening;
  const overhang = typeof shade === 'object' ? shade?.overhang : undefined;
  const roof = overhang
    ? (top + overhang.above - z) / fall - thick - overhang.depth / cosine
    : Number.POSITIVE_INFINITY;
  return [Math.max(0, (bottom - z) / fall), Math.min((top - z) / fall - thick, roof)];
}
