import type { Detector, Fixture, Level, Opening, Shape, Stream, Wall } from '../../geometry/plan/model.ts';
import type { Geom, Geos, Point, Points } from './geos.ts';
import { apart, dot, minus, offSegment, plus, quarter, unit } from './plane.ts';
import type { OracleWalls } from './walls.ts';

/**
 * How curves are approximated by chords: with the corners on the curve (the shape is too small), outside it (too
 * large), or so that a full turn has exactly the area of the curve.
 */
export type Rounding = 'inside' | 'outside' | 'even';

interface Part {
  readonly points: Points;
  readonly grow: number;
}

/** Returns the distance of the chords' corners from the center, as a multiple of the radius; each chord spans `step` radians. */
export function stretch(rounding: Rounding, step: number): number {
  if (rounding === 'inside' || step === 0) return 1;
  return rounding === 'outside' ? 1 / Math.cos(step / 2) : Math.sqrt(step / Math.sin(step));
}

/** A body that a detector must keep away from. */
export interface OracleBody {
  readonly subject: string;
  /** Distance from a point to the body, mm; for a stream negative inside. */
  readonly distance: (x: number, y: number) => number;
  /** The body for shading: rings (two points for a line, one for a point), and how far the body extends beyond them, mm. */
  readonly parts: (rounding: Rounding, perQuadrant: number) => readonly Part[];
  readonly bottom: number;
  readonly top: number;
  readonly stream: boolean;
  /** Whether no detector can be inside it. Walls and openings are not solid: the room rule covers them. */
  readonly solid?: boolean;
  /** The shape of an object, which may support a detector. */
  readonly carrier?: Shape;
}

/** Number of chords in the full turn of a stream's arc: at a reach of 4 m they cut off 0.0012 mm. */
const CHORDS = 4096;
const RADIANS = Math.PI / 180;

export function wallBodies(geos: Geos, walls: OracleWalls, outside: boolean): OracleBody[] {
  return walls.pieces
    .filter((piece) => piece.outside === outside)
    .map(({ wall, parts }) => {
      const rings = parts.flatMap((part) => geos.areas(part).map(([outer]) => ({ points: outer ?? [], grow: 0 })));
      return {
        subject: wall.id,
        distance: (x: number, y: number) => Math.min(...parts.map((part) => geos.distanceTo(part, x, y))),
        parts: () => rings,
        bottom: 0,
        top: Number.POSITIVE_INFINITY,
        stream: false,
      };
    });
}

/** Returns the bodies of outside doors, windows and passages. */
export function openingBodies(geos: Geos, level: Level, walls: OracleWalls): OracleBody[] {
  return level.openings
    .filter((opening) => isOutside(opening, level, walls))
    .map((opening) => {
      const ring = openingRing(geos, opening, level);
      return { ...ringBody(geos, opening.id, ring), bottom: opening.bottom, top: opening.top };
    });
}

function wallOf({ wall }: Opening, { walls }: Level) {
  const found = walls.find(({ id }) => id === wall);
  if (!found) throw new Error(`no wall ${wall}`);
  return found;
}

/** A wall runs along another if it is within this distance, mm (half an inch), at no more than this slope: no published value. */
const RUNS_THERE = { near: 12.7, slope: 0.1 };

/** "By the thickness of the thickest wall that runs there." */
function openingRing(geos: Geos, opening: Opening, level: Level): Points {
  const { from, to, thickness: own } = wallOf(opening, level);
  const there = level.walls.filter((wall) => runsAt(geos, wall, opening, wallOf(opening, level)));
  const thickness = Math.max(own, ...there.map((wall) => wall.thickness));
  const along = unit(minus(to, from));
  const across = quarter(along);
  const corner = (s: number, side: number) => plus(plus(from, along, s), across, (side * thickness) / 2);
  const end = opening.offset + opening.width;
  return [corner(opening.offset, -1), corner(end, -1), corner(end, 1), corner(opening.offset, 1)];
}

function runsAt(geos: Geos, { from, to }: Wall, { offset, width }: Opening, own: Wall): boolean {
  const along = unit(minus(own.to, own.from));
  const [s, t] = [from, to].map((p) => dot(minus(p, own.from), along)) as [number, number];
  const across = dot(minus(to, from), quarter(along));
  if (Math.abs(across) > RUNS_THERE.slope * Math.abs(t - s)) return false;
  const [first, last] = [Math.max(Math.min(s, t), offset), Math.min(Math.max(s, t), offset + width)];
  if (last - first <= 0.01) return false;
  const at = (stop: number) => plus(from, minus(to, from), (stop - s) / (t - s));
  const beside = geos.line([at(first), at(last)]);
  const opening = geos.line([plus(own.from, along, offset), plus(own.from, along, offset + width)]);
  return geos.distance(beside, opening) <= RUNS_THERE.near;
}

/** "When its wall is": when any stretch of its wall that it shares is outside. */
function isOutside(opening: Opening, level: Level, walls: OracleWalls): boolean {
  const shared = stretchesOf(opening, level, walls);
  return shared.length === 0 || shared.some(({ outside }) => outside);
}

function stretchesOf(opening: Opening, level: Level, { pieces }: OracleWalls): OracleWalls['pieces'] {
  const wall = wallOf(opening, level);
  const along = unit(minus(wall.to, wall.from));
  return pieces.filter(({ walls, ends }) => {
    if (!walls.includes(wall)) return false;
    const [s, t] = ends.map((end) => dot(minus(end, wall.from), along)) as [number, number];
    return Math.min(Math.max(s, t), opening.offset + opening.width) - Math.max(Math.min(s, t), opening.offset) > 0.01;
  });
}

export function shapeBody(geos: Geos, subject: string, shape: Shape): OracleBody {
  if ('circle' in shape) {
    const { center, radius } = shape.circle;
    const point = geos.point(center[0], center[1]);
    return {
      subject,
      distance: (x, y) => Math.max(0, geos.distanceTo(point, x, y) - radius),
      parts: () => [{ points: [center], grow: radius }],
      bottom: 0,
      top: 0,
      stream: false,
    };
  }
  return ringBody(geos, subject, 'box' in shape ? boxRing(shape.box) : shape.polygon.points);
}

export function boxRing({ center, width, depth, turn }: Extract<Shape, { box: unknown }>['box']): Points {
  const along: Point = [Math.cos(turn * RADIANS), Math.sin(turn * RADIANS)];
  const corner = (s: number, t: number) => plus(plus(center, along, (s * width) / 2), quarter(along), (t * depth) / 2);
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

function ringBody(geos: Geos, subject: string, ring: Points): OracleBody {
  const points = withoutRepeats(ring);
  const geom = pointsGeom(geos, points);
  return {
    subject,
    distance: (x, y) => geos.distanceTo(geom, x, y),
    parts: () => [{ points, grow: 0 }],
    bottom: 0,
    top: 0,
    stream: false,
  };
}

function withoutRepeats(ring: Points): Points {
  return ring.filter((p, i) => !ring.slice(0, i).some((q) => apart(p, q) < 1e-9));
}

/** Returns a polygon; a line if all corners are on one line, a point if there is only one corner. */
export function pointsGeom(geos: Geos, points: Points): Geom {
  const [first, second] = points;
  if (!first) throw new Error('a body needs a point');
  if (!second) return geos.point(first[0], first[1]);
  const far = points.reduce((best, p) => (apart(p, first) > apart(best, first) ? p : best), second);
  if (points.every((p) => offSegment(p, first, far) < 1e-9)) return geos.line([...points, first]);
  return geos.area([points]);
}

/** Returns the middle of a fixture, from which its stream blows; for a polygon the middle of its bounding box. */
function middleOf(shape: Shape): Point {
  if ('circle' in shape) return shape.circle.center;
  if ('box' in shape) return shape.box.center;
  const xs = shape.polygon.points.map(([x]) => x);
  const ys = shape.polygon.points.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

export function streamOf(geos: Geos, { id, shape }: Fixture, stream: Stream): OracleBody {
  const center = middleOf(shape);
  const points = sectorRing(center, stream, CHORDS, 'inside');
  const geom = pointsGeom(geos, points);
  const edge = points.length > 2 ? geos.boundary(geom) : geom;
  return {
    subject: id,
    distance: (x, y) => (geos.holds(geom, x, y) ? -geos.distanceTo(edge, x, y) : geos.distanceTo(geom, x, y)),
    parts: (rounding, perQuadrant) =>
      halves(stream).map((half) => ({ points: sectorRing(center, half, 4 * perQuadrant, rounding), grow: 0 })),
    bottom: 0,
    top: 0,
    stream: true,
  };
}

/** Returns a wide sector as two sectors, so that each is convex. */
function halves(stream: Stream): Stream[] {
  const { direction, spread } = stream;
  if (spread <= 180) return [stream];
  return [-1, 1].map((side) => ({ ...stream, spread: spread / 2, direction: direction + (side * spread) / 4 }));
}

function sectorRing(center: Point, { direction, spread, reach }: Stream, chords: number, rounding: Rounding): Points {
  if (reach === 0) return [center];
  const count = Math.max(2, Math.ceil((chords * spread) / 360));
  const out = reach * stretch(rounding, (spread * RADIANS) / count);
  const at = (degrees: number) => plus(center, [Math.cos(degrees * RADIANS), Math.sin(degrees * RADIANS)], out);
  if (spread === 0) return [center, at(direction)];
  const arc = Array.from({ length: count + 1 }, (_, i) => at(direction - spread / 2 + (spread * i) / count));
  return spread >= 360 ? arc.slice(0, -1) : [center, ...arc];
}

/** The size of a detector and the height of its underside. */
export type Cylinder = Pick<Detector, 'base' | 'radius' | 'tall'>;
