import type { Wall } from '../../geometry/plan/model.ts';
import type { Point, Points } from './geos.ts';
import { apart, dot, minus, offSegment, plus, quarter, unit, wedge } from './plane.ts';
import type { Stretch } from './walls.ts';

/** "A joint reaches no farther than ten half-thicknesses from the node." */
const LIMIT = 10;
/** Half thickness of a wall drawn without thickness, mm, so that it still separates two rooms. */
const THINNEST_HALF = 0.001;
/** Sine of the angle between two walls below which one continues the other: no gap is left between their ends. */
const STRAIGHT = 1e-9;
/** Points closer than this are the same point, mm. */
const ONE = 0.01;
/** Rounding of coordinates, mm. */
const WITHIN = 1e-6;

/** The gap between the square ends of two walls on the outer side, as a convex polygon. */
export interface OracleJoint {
  readonly stretches: readonly [Stretch, Stretch];
  readonly walls: readonly [Wall, Wall];
  readonly node: Point;
  readonly ring: Points;
  /** Other stretches at the node, or whole walls there, whose rectangle contains all of it. */
  readonly within: { readonly stretches: readonly Stretch[]; readonly wall: boolean };
}

export function half({ thickness }: Pick<Wall, 'thickness'>): number {
  return Math.max(THINNEST_HALF, thickness / 2);
}

/** Returns the rectangle of a wall: half the thickness on either side of the center-line, with square ends. */
export function rectangle(a: Point, b: Point, width: number): Points {
  const across = quarter(unit(minus(b, a)));
  return [plus(a, across, -width), plus(b, across, -width), plus(b, across, width), plus(a, across, width)];
}

/** A wall that leaves a node. */
interface Arm {
  readonly stretch: Stretch;
  readonly wall: Wall;
  readonly along: Point;
  /** The far end of the wall. */
  readonly far: Point;
}

/** Returns a joint for every two walls that share a node and make joints. @param more by how much every wall is thicker on either side */
export function jointsOf(stretches: readonly Stretch[], more = 0): OracleJoint[] {
  const nodes = new Map<string, { node: Point; around: Stretch[] }>();
  for (const stretch of stretches) {
    for (const node of stretch.joined.length > 0 ? stretch.ends : []) {
      const key = node.join(' ');
      const known = nodes.get(key);
      if (known) known.around.push(stretch);
      else nodes.set(key, { node, around: [stretch] });
    }
  }
  return [...nodes.values()].flatMap(({ node, around }) => jointsAt(node, around, more));
}

function jointsAt(node: Point, around: readonly Stretch[], more: number): OracleJoint[] {
  const arms = around.flatMap((stretch) => stretch.joined.map((wall) => armOf(stretch, wall, node)));
  const joints: OracleJoint[] = [];
  arms.forEach((one, i) => {
    for (const two of arms.slice(i + 1)) {
      const ring = runsOn(one, two) ? null : openGap(node, one, two, more);
      const isSame = (joint: OracleJoint) =>
        joint.stretches[0] === one.stretch && joint.stretches[1] === two.stretch && holdsAll(joint.ring, ring ?? []);
      // Of walls that coincide, the joint of the thickest comes first, and nearly always contains those of the others.
      if (!ring || joints.some(isSame)) continue;
      const walls = [one.wall, two.wall] as const;
      joints.push({ stretches: [one.stretch, two.stretch], walls, node, ring, within: holders(ring, around, more) });
    }
  });
  return joints;
}

/** Returns an arm with the direction of its wall, because the ends of a short stretch are known only to a hundredth of a mm. */
function armOf(stretch: Stretch, wall: Wall, node: Point): Arm {
  const along = unit(minus(wall.to, wall.from));
  const isForth = dot(along, minus(farEnd(stretch, node), node)) > 0;
  return isForth
    ? { stretch, wall, along, far: wall.to }
    : { stretch, wall, along: minus([0, 0], along), far: wall.from };
}

/**
 * Returns whether two walls leave a node in the same direction and the shorter ends on the other, within the distance at which points are the
 * same: neither forms a corner. This also holds for two pieces that extend two ends to each other; a joint in the narrow gap between them
 * would be half a meter long.
 */
function runsOn(one: Arm, two: Arm): boolean {
  if (dot(one.along, two.along) <= 0) return false;
  const length = ({ wall }: Arm) => apart(wall.from, wall.to);
  const [short, long] = length(one) < length(two) ? [one, two] : [two, one];
  return offSegment(short.far, long.wall.from, long.wall.to) <= ONE;
}

/** Returns whether a convex ring contains all corners of another. */
function holdsAll(ring: Points, inner: Points): boolean {
  const twice = ring.reduce((sum, p, i) => sum + wedge(p, ring[(i + 1) % ring.length] as Point), 0);
  return ring.every((a, i) => {
    const b = ring[(i + 1) % ring.length] as Point;
    if (apart(a, b) < WITHIN) return true;
    const inward = quarter(unit(minus(b, a)));
    return inner.every((p) => Math.sign(twice) * dot(minus(p, a), inward) >= -WITHIN);
  });
}

/** Returns the area from the node between the two outward normals, behind both faces, cut off at ten half-thicknesses. */
function openGap(node: Point, one: Arm, two: Arm, more: number): Points | null {
  const [u, v] = [one.along, two.along];
  if (Math.abs(wedge(u, v)) < STRAIGHT) return null;
  const [p, q] = [half(one.wall) + more, half(two.wall) + more];
  const away = (along: Point, from: Point): Point => {
    const normal = quarter(along);
    return dot(normal, from) < 0 ? normal : [-normal[0], -normal[1]];
  };
  const [m, n] = [away(u, v), away(v, u)];
  const large = 1e4 * (p + q);
  const outward = unit(minus([0, 0], unit(plus(u, v))));
  let ring: Points = [node, plus(node, m, large), plus(node, outward, large), plus(node, n, large)];
  ring = behind(ring, m, dot(m, node) + p);
  ring = behind(ring, n, dot(n, node) + q);
  const reach = LIMIT * Math.max(p, q);
  if (ring.some((corner) => apart(corner, node) > reach)) {
    const far = (along: Point, normal: Point, width: number) =>
      plus(plus(node, normal, width), along, -Math.sqrt(reach ** 2 - width ** 2));
    const [a, b] = [far(u, m, p), far(v, n, q)];
    const across = quarter(unit(minus(b, a)));
    const out = dot(across, outward) > 0 ? across : minus([0, 0], across);
    ring = behind(ring, out, dot(out, a));
  }
  return ring.length >= 3 ? ring : null;
}

function farEnd({ ends: [a, b] }: Stretch, node: Point): Point {
  return a[0] === node[0] && a[1] === node[1] ? b : a;
}

/** Returns the part of a convex polygon behind a line (Sutherland and Hodgman 1974). */
function behind(ring: Points, normal: Point, most: number): Points {
  return ring.flatMap((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point;
    const [s, t] = [dot(normal, a) - most, dot(normal, b) - most];
    const crossing = (): Point => plus(a, minus(b, a), s / (s - t));
    if (t <= 0) return s > 0 && t < 0 ? [crossing(), b] : [b];
    return s < 0 ? [crossing()] : [];
  });
}

function holders(ring: Points, around: readonly Stretch[], more: number): OracleJoint['within'] {
  const holds = (a: Point, b: Point, width: number) => {
    const along = unit(minus(b, a));
    const length = apart(a, b);
    return ring.every((corner) => {
      const [s, t] = [dot(minus(corner, a), along), dot(minus(corner, a), quarter(along))];
      return s >= -WITHIN && s <= length + WITHIN && Math.abs(t) <= width + WITHIN;
    });
  };
  return {
    stretches: around.filter(({ feet, wall }) => holds(...feet, half(wall) + more)),
    wall: around.some(({ walls }) => walls.some((one) => holds(one.from, one.to, half(one) + more))),
  };
}
