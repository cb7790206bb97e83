import type { Point, Points } from './geos.ts';
import { apart, dot, minus, plus, quarter, unit, wedge } from './plane.ts';
import type { Stretch } from './walls.ts';

/** "A joint reaches no farther than ten half-thicknesses from the node." */
const LIMIT = 10;
/** A wall drawn without thickness still parts two rooms, mm. */
const THINNEST_HALF = 0.001;
/** Walls of which one goes on as the other turn by less than this: no gap is left between their ends. */
const STRAIGHT = 1e-9;
/** Rounding of coordinates, mm. */
const WITHIN = 1e-6;

/** What is left open between the square ends of two walls on the outer side, as a convex polygon. */
export interface OracleJoint {
  readonly stretches: readonly [Stretch, Stretch];
  readonly node: Point;
  readonly ring: Points;
  /** Other stretches at the node, or whole walls there, whose rectangle has all of it. */
  readonly within: { readonly stretches: readonly Stretch[]; readonly wall: boolean };
}

export function half({ wall }: Pick<Stretch, 'wall'>): number {
  return Math.max(THINNEST_HALF, wall.thickness / 2);
}

/** Half the thickness on either side of the centre-line, square ends. */
export function rectangle(a: Point, b: Point, width: number): Points {
  const across = quarter(unit(minus(b, a)));
  return [plus(a, across, -width), plus(b, across, -width), plus(b, across, width), plus(a, across, width)];
}

/** A joint for every two stretches that share a node and make joints. @param more by how much every wall is thicker on either side */
export function jointsOf(stretches: readonly Stretch[], more = 0): OracleJoint[] {
  const nodes = new Map<string, { node: Point; around: Stretch[] }>();
  for (const stretch of stretches) {
    for (const node of stretch.joined ? stretch.ends : []) {
      const key = node.join(' ');
      const known = nodes.get(key);
      if (known) known.around.push(stretch);
      else nodes.set(key, { node, around: [stretch] });
    }
  }
  return [...nodes.values()].flatMap(({ node, around }) =>
    around.flatMap((one, i) =>
      around.slice(i + 1).flatMap((two): OracleJoint[] => {
        const ring = openGap(node, one, two, more);
        return ring ? [{ stretches: [one, two], node, ring, within: holders(ring, around, more) }] : [];
      }),
    ),
  );
}

/** From the node between the two outward normals, behind both faces, cut off where the faces are ten half-thicknesses away. */
function openGap(node: Point, one: Stretch, two: Stretch, more: number): Points | null {
  const [u, v] = [one, two].map((stretch) => leaving(stretch, node)) as [Point, Point];
  if (Math.abs(wedge(u, v)) < STRAIGHT) return null;
  const [p, q] = [one, two].map(({ joined, wall }) => half({ wall: joined ?? wall }) + more) as [number, number];
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

/** The way in which a stretch leaves a node: that of its wall, for the ends of a short stretch are known to a hundredth of a mm only. */
function leaving(stretch: Stretch, node: Point): Point {
  const { from, to } = stretch.joined ?? stretch.wall;
  const along = unit(minus(to, from));
  return dot(along, minus(farEnd(stretch, node), node)) > 0 ? along : [-along[0], -along[1]];
}

export function farEnd({ ends: [a, b] }: Stretch, node: Point): Point {
  return a[0] === node[0] && a[1] === node[1] ? b : a;
}

/** What of a convex polygon lies behind a line (Sutherland and Hodgman 1974). */
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
    stretches: around.filter((one) => holds(...one.ends, half(one) + more)),
    wall: around.some((one) => holds(one.wall.from, one.wall.to, half(one) + more)),
  };
}
