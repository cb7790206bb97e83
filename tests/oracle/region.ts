import { boxRing, type Cylinder, type OracleBody, pointsGeom, type Rounding, stretch } from './bodies.ts';
import type { OracleRoom } from './floors.ts';
import type { Geom, Geos, Point, Points } from './geos.ts';
import { type OracleLevel, verdictOfUse } from './geos-oracle.ts';
import {
  apart,
  bearing,
  type Extent,
  extentOf,
  extentsApart,
  grown,
  minus,
  plus,
  quarter,
  unit,
  wedge,
} from './plane.ts';
import { depthIn, required, SHORTFALL, sharesHeight } from './rules.ts';

/** Corners closer than this are the same corner, mm: an edge between two that differ by rounding could have any direction. */
const SAME = 1e-6;

/** A corner with a smaller turn is none, radians. */
const STRAIGHT = 1e-9;

/**
 * The engine draws a round top as this many chords inside the circle, on the safe side ("The region" in geometry/README.md): the area
 * where a detector is wholly on it may be too small by the area between, 7 mm² for a table of 840 mm.
 */
const TOP_CHORDS = 720;

/** The area that one body excludes: everything within `keep` of its parts. */
export interface Blocker {
  readonly rule: string;
  readonly body: OracleBody;
  readonly keep: number;
  /** How far inside the outline of the body the axis must be for the body to support the detector; null if it does not at this height. */
  readonly onTop: number | null;
}

/** Returns the inverse of `rules.ts`: how far the axis of a probe keeps from each body; bodies that never block are omitted. */
export function blockersOf(oracle: OracleLevel, probe: Cylinder): Blocker[] {
  const blockers: Blocker[] = [];
  for (const [rule, bodies] of oracle.bodies) {
    const need = required(oracle.plan, rule) - SHORTFALL;
    for (const body of bodies) {
      const keep = body.stream ? probe.radius - SHORTFALL : keepOf(rule, body, probe, need);
      const level = body.carrier && body.top > probe.base && body.top - probe.base <= 3;
      const onTop = level ? Math.max(0, probe.radius - SHORTFALL) : null;
      if (keep !== null) blockers.push({ rule, body, keep: Math.max(0, keep), onTop });
    }
  }
  return blockers;
}

function keepOf(rule: string, body: OracleBody, probe: Cylinder, need: number): number | null {
  const { base, tall, radius } = probe;
  if (need <= 0) return sharesHeight(body, probe) ? radius - SHORTFALL : null;
  if (rule !== 'object') return radius + need;
  const height = Math.max(0, body.bottom - base - tall);
  return body.top <= base || height >= need ? null : radius + Math.sqrt(need * need - height * height);
}

/** Returns whether the height band and the ceiling allow the probe. */
export function heightAllows({ plan, level }: OracleLevel, { base, tall }: Cylinder): boolean {
  const meets = (got: number, asks: number) => got >= asks - SHORTFALL;
  const over = base + tall;
  return meets(base, 20 * 25.4) && meets(72 * 25.4, over) && meets(level.ceiling - over, required(plan, 'ceiling', 12));
}

/** Returns where the axis may be in a room, as areas of GEOS that do not overlap; empty if the use or the height excludes the room. */
export function roomRegion(
  oracle: OracleLevel,
  room: OracleRoom,
  probe: Cylinder,
  blockers: readonly Blocker[],
  rounding: Rounding,
  perQuadrant: number,
): Geom[] {
  if (verdictOfUse(oracle, room) !== 'clear' || !heightAllows(oracle, probe)) return [];
  const { geos } = oracle;
  const without = (from: Geom, some: readonly Blocker[], rim: boolean) => {
    let free = from;
    for (const ring of zonesFor(oracle, room, probe, some, rounding, perQuadrant, rim)) {
      const zone = pointsGeom(geos, ring);
      // More than half of the zones no longer meet the remaining area at this point.
      if (!geos.meets(free, zone)) continue;
      free = geos.difference(free, zone);
      if (geos.isEmpty(free)) break;
    }
    return free;
  };
  let parts = [
    without(
      room.floor,
      blockers.filter(({ onTop }) => onTop === null),
      true,
    ),
  ];
  // Around an object that supports the detector, and on top of it.
  for (const blocker of blockers) {
    if (blocker.onTop === null) continue;
    const top = topOf(geos, blocker, rounding, perQuadrant);
    parts = parts
      .flatMap((part) => [without(part, [blocker], false), ...(top ? [geos.intersection(part, top)] : [])])
      .filter((part) => !geos.isEmpty(part));
  }
  return parts;
}

/** Returns where the detector is wholly on the object: its outline minus a strip along every side; null for nowhere. */
function topOf(geos: Geos, { body, onTop }: Blocker, rounding: Rounding, perQuadrant: number): Geom | null {
  if (onTop === null || !body.carrier) return null;
  const shape = body.carrier;
  if ('circle' in shape) {
    const radius = shape.circle.radius - onTop;
    const turned = ({ inside: 'outside', outside: 'inside', even: 'even' } as const)[rounding];
    const chords = rounding === 'outside' ? Math.min(TOP_CHORDS, 4 * perQuadrant) : 4 * perQuadrant;
    return radius > 0 ? geos.area([circle(shape.circle.center, radius, turned, chords)]) : null;
  }
  const ring = 'box' in shape ? boxRing(shape.box) : shape.polygon.points;
  let top = pointsGeom(geos, ring);
  if (geos.measure(top) === 0) return null;
  for (const [i, a] of ring.entries()) {
    const side = [a, ring[(i + 1) % ring.length] as Point];
    for (const strip of grownRings(side, onTop, rounding, perQuadrant))
      top = geos.difference(top, pointsGeom(geos, strip));
  }
  return geos.isEmpty(top) ? null : top;
}

/**
 * Returns the convex polygons that are subtracted from a room, the large ones first: zones, and the strip that the rim keeps from the
 * walls. If a rule requires a distance from a wall, the wall's zone contains that strip.
 */
export function zonesFor(
  oracle: OracleLevel,
  { face, rings }: OracleRoom,
  { radius }: Cylinder,
  blockers: readonly Blocker[],
  rounding: Rounding,
  perQuadrant: number,
  withRim = true,
): Points[] {
  const { geos, plan, bodies } = oracle;
  const rim = Math.max(0, radius - SHORTFALL);
  const unruled = ['outside-wall', 'object']
    .filter((rule) => required(plan, rule) <= SHORTFALL)
    .flatMap((rule) => (bodies.get(rule) ?? []).filter(({ top }) => top === Number.POSITIVE_INFINITY));
  const room = extentOf(rings.flat());
  return [...(withRim ? unruled : []).map((body) => ({ body, keep: rim })), ...blockers]
    .flatMap(({ body, keep }) =>
      body.parts(rounding, perQuadrant).map(({ points, grow }) => ({ points, keep: keep + grow })),
    )
    .filter(({ points, keep }) => {
      const reach = keep * 1.01 + SAME;
      return extentsApart(room, extentOf(points)) <= reach && geos.distance(face, pointsGeom(geos, points)) <= reach;
    })
    .sort((a, b) => b.keep - a.keep)
    .flatMap(({ points, keep }) => grownRings(points, keep, rounding, perQuadrant));
}

/** Returns convex polygons that together are all points within `keep` of a ring (or of a line of two points, or a point). */
export function grownRings(points: Points, keep: number, rounding: Rounding, perQuadrant: number): Points[] {
  if (keep === 0) return points.length > 2 ? [points] : [];
  const turned = clockwise(
    points.filter((p, i) => apart(p, points[(i + 1) % points.length] as Point) > SAME || points.length < 2),
  );
  if (isConvex(turned)) return [grownConvex(turned, keep, rounding, perQuadrant)];
  const edges = turned.map((p, i): Points => [p, turned[(i + 1) % turned.length] as Point]);
  return [turned, ...edges.map((edge) => grownConvex(edge, keep, rounding, perQuadrant))];
}

function clockwise(points: Points): Points {
  const twice = points.reduce((sum, p, i) => sum + wedge(p, points[(i + 1) % points.length] as Point), 0);
  return twice < 0 ? [...points].reverse() : points;
}

function isConvex(points: Points): boolean {
  if (points.length < 3) return true;
  return points.every((p, i) => {
    const [q, r] = [points[(i + 1) % points.length] as Point, points[(i + 2) % points.length] as Point];
    return wedge(unit(minus(q, p)), unit(minus(r, q))) >= -1e-12;
  });
}

/** Returns a convex ring with every corner rounded, from the normal of the edge before it to that of the edge after it. */
function grownConvex(points: Points, keep: number, rounding: Rounding, perQuadrant: number): Points {
  const [center] = points;
  if (center && points.length === 1) return circle(center, keep, rounding, 4 * perQuadrant);
  return points.flatMap((p, i) => {
    const before = points[(i + points.length - 1) % points.length] as Point;
    const after = points[(i + 1) % points.length] as Point;
    const from = bearing(quarter(minus(before, p)));
    const sweep = (bearing(quarter(minus(p, after))) - from + 2 * Math.PI) % (2 * Math.PI);
    // Rounding may turn the angle between two collinear edges into almost 2π.
    return sweep > 1.5 * Math.PI ? [] : corner(p, keep, from, sweep, rounding, perQuadrant);
  });
}

function circle(center: Point, keep: number, rounding: Rounding, chords: number): Points {
  const radius = keep * stretch(rounding, (2 * Math.PI) / chords);
  return Array.from({ length: chords }, (_, k) => onCircle(center, radius, (2 * Math.PI * k) / chords));
}

/** Returns an arc as chords. It begins and ends on the curve, square to the edges, so that straight edges keep their position. */
function corner(p: Point, keep: number, from: number, sweep: number, rounding: Rounding, perQuadrant: number): Points {
  // The edges are collinear within rounding: two corners there would fold over each other.
  if (sweep < STRAIGHT) return [onCircle(p, keep, from)];
  const count = Math.max(1, Math.ceil((sweep / (Math.PI / 2)) * perQuadrant));
  const step = sweep / count;
  const inner = (k: number) =>
    rounding === 'inside' ? onCircle(p, keep, from + step * k) : onCircle(p, reach(), from + step * (k + 0.5));
  const reach = () => (rounding === 'outside' ? keep / Math.cos(step / 2) : circleReach(keep, step, count));
  const points = Array.from({ length: count }, (_, k) => inner(k));
  return [onCircle(p, keep, from), ...points, onCircle(p, keep, from + sweep)];
}

/** Returns the radius of the corners of `count` + 1 chords, the first and last half as wide, that gives the area of the sector. */
function circleReach(keep: number, step: number, count: number): number {
  const square = (count - 1) * Math.sin(step);
  const linear = 2 * keep * Math.sin(step / 2);
  const area = keep * keep * count * step;
  return (2 * area) / (linear + Math.sqrt(linear * linear + 4 * square * area));
}

function onCircle(center: Point, radius: number, angle: number): Point {
  return plus(center, [Math.cos(angle), Math.sin(angle)], radius);
}

/** Returns a lower bound of the distance from a point to a blocker's area, mm, from the bounding box of its body. */
export function atLeastOutside({ body, keep }: Blocker, x: number, y: number): number {
  let extent = EXTENTS.get(body);
  if (!extent) {
    const parts = body.parts('outside', 8);
    extent = grown(extentOf(parts.flatMap(({ points }) => points)), Math.max(...parts.map(({ grow }) => grow)) + SAME);
    EXTENTS.set(body, extent);
  }
  const away = extentsApart(extent, [x, y, x, y]);
  // Inside the box nothing is known: for a stream the distance may even be negative.
  return away > 0 ? away - keep : Number.NEGATIVE_INFINITY;
}

const EXTENTS = new WeakMap<OracleBody, Extent>();

/** Returns the distance of a point from a blocker's area, mm; negative inside it. */
export function outsideOf({ body, keep, onTop }: Blocker, x: number, y: number): number {
  const round = body.distance(x, y) - keep;
  if (onTop === null || !body.carrier || round >= 0) return round;
  return Math.max(round, depthIn(body.carrier, [x, y]) - onTop);
}
