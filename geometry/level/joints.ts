import type { Mm, XY } from '../plan/model.ts';
import { convexHull } from '../plane/hull.ts';
import { distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';

/** A joint reaches at most this many half-thicknesses of the thicker wall from the node (miter limit). */
const MITER_LIMIT = 10;

/** Walls at so small an angle that their joint would be narrower than this continue straight, mm. */
const STRAIGHT_WIDTH: Mm = 1e-7;

/** Corners of a joint closer than this are the same corner, mm. */
const SAME_POINT: Mm = 1e-9;

/** A wall leaving a node: where its square end crosses its own line, its direction, half of its thickness. */
export interface Arm {
  readonly at: XY;
  readonly along: XY;
  readonly half: Mm;
}

/**
 * Returns the miter joint of two walls: the gap between their square ends on the outer side of the node, bounded by
 * the extended faces of both. If the faces meet in the gap, that point is the tip, limited to ten half-thicknesses of
 * the thicker wall; if they meet outside the gap, the face of the thinner wall bounds it. Convex, clockwise on
 * screen, with the square ends as two of its sides; null for collinear walls.
 */
export function jointRing(node: XY, one: Arm, two: Arm): Ring | null {
  const turn = one.along[0] * two.along[1] - one.along[1] * two.along[0];
  const cos = one.along[0] * two.along[0] + one.along[1] * two.along[1];
  if (Math.abs(turn) * Math.max(one.half, two.half) <= STRAIGHT_WIDTH) return null;
  // `v` leaves clockwise on screen of `u`: the outer sides are left of u and right of v.
  const [u, v] = turn > 0 ? [one, two] : [two, one];
  const sin = Math.abs(turn);
  const [ux, uy] = u.along;
  const [vx, vy] = v.along;
  const normalU: XY = [uy, -ux];
  const normalV: XY = [-vy, vx];
  const endU = plus(u.at, normalU, u.half);
  const endV = plus(v.at, normalV, v.half);
  const isExact = distance(u.at, node) <= SAME_POINT && distance(v.at, node) <= SAME_POINT;
  const square = [node, u.at, v.at];
  // How far back from each end, along its wall, the faces meet.
  const a = u.half + (u.at[0] - node[0]) * normalU[0] + (u.at[1] - node[1]) * normalU[1];
  const b = v.half + (v.at[0] - node[0]) * normalV[0] + (v.at[1] - node[1]) * normalV[1];
  const backU = (b + a * cos) / sin;
  const backV = (a + b * cos) / sin;
  // The faces meet outside the gap: the thinner wall's face bounds it.
  if (backU < 0) return hull([...square, endV, plus(node, normalU, b / -cos)]);
  if (backV < 0) return hull([...square, endU, plus(node, normalV, a / -cos)]);
  const reach = MITER_LIMIT * Math.max(u.half, v.half);
  if (Math.hypot(a, backU) <= reach) {
    const tip = plus(plus(node, normalU, a), u.along, -backU);
    // The usual case needs only these four corners.
    return isExact && backU > SAME_POINT && backV > SAME_POINT
      ? [node, endV, tip, endU]
      : hull([...square, endU, endV, tip]);
  }
  return hull([...square, endU, endV, ...[u, v].map((arm, i) => faceAt(arm, i === 0 ? normalU : normalV, reach))]);
}

/** Returns the point on the extended face of a wall at a distance from the node. */
function faceAt({ at, along, half }: Arm, normal: XY, reach: Mm): XY {
  return plus(plus(at, normal, half), along, -Math.sqrt(reach * reach - half * half));
}

/**
 * Returns one ring in place of the joints of very many walls at one node: it contains everything that any of them
 * could reach, so no solid is lost. Clockwise on screen.
 *
 * @param more how far from the node the walls may meet, mm
 */
export function highDegreeRing(node: XY, half: Mm, more: Mm = 0): Ring {
  const radius = (MITER_LIMIT * half + more) / Math.cos(Math.PI / CROWD_CORNERS);
  return Array.from({ length: CROWD_CORNERS }, (_, i): XY => {
    const angle = (2 * Math.PI * i) / CROWD_CORNERS;
    return [node[0] + radius * Math.cos(angle), node[1] + radius * Math.sin(angle)];
  });
}

const CROWD_CORNERS = 64;

function plus(p: XY, way: XY, far: Mm): XY {
  return [p[0] + way[0] * far, p[1] + way[1] * far];
}

/** Returns the convex hull; null when it has no width. */
function hull(points: readonly XY[]): Ring | null {
  const ring = convexHull(points, SAME_POINT);
  return ring.length >= 3 ? ring : null;
}
