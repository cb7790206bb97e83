import type { Mm, XY } from '../plan/model.ts';
import { convexHull } from '../plane/hull.ts';
import { distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';

/** A joint reaches no farther than this many half-thicknesses of the thicker wall from the node. */
const REACH = 10;

/** Walls that turn by so little that their joint is no broader than this, mm, run straight on: it would be rounding. */
const STRAIGHT: Mm = 1e-7;

/** Corners of a joint nearer than this are one, mm. */
const SAME: Mm = 1e-9;

/** A wall as it leaves a node: where its square end crosses its own line, the way it goes, half of its thickness. */
export interface Arm {
  readonly at: XY;
  readonly along: XY;
  readonly half: Mm;
}

/**
 * What joins two walls square on the outer side of a node: the gap between their two square ends, as far as the faces of both
 * reach. Where the faces meet in the gap that is the mitre, with its tip no farther than ten half-thicknesses of the thicker wall;
 * where they meet outside of it the thinner wall's face bounds it. Convex, clockwise on screen, with the square ends as two
 * of its sides; null for walls in one line.
 */
export function jointRing(node: XY, one: Arm, two: Arm): Ring | null {
  const turn = one.along[0] * two.along[1] - one.along[1] * two.along[0];
  const cos = one.along[0] * two.along[0] + one.along[1] * two.along[1];
  if (Math.abs(turn) * Math.max(one.half, two.half) <= STRAIGHT) return null;
  // `v` leaves clockwise on screen of `u`: the outer sides are left of u and right of v.
  const [u, v] = turn > 0 ? [one, two] : [two, one];
  const sin = Math.abs(turn);
  const [ux, uy] = u.along;
  const [vx, vy] = v.along;
  const normalU: XY = [uy, -ux];
  const normalV: XY = [-vy, vx];
  const endU = plus(u.at, normalU, u.half);
  const endV = plus(v.at, normalV, v.half);
  const isExact = distance(u.at, node) <= SAME && distance(v.at, node) <= SAME;
  const square = [node, u.at, v.at];
  // Where the faces meet: so far back from each end along its own wall.
  const a = u.half + (u.at[0] - node[0]) * normalU[0] + (u.at[1] - node[1]) * normalU[1];
  const b = v.half + (v.at[0] - node[0]) * normalV[0] + (v.at[1] - node[1]) * normalV[1];
  const backU = (b + a * cos) / sin;
  const backV = (a + b * cos) / sin;
  // The faces meet outside of the gap: the thinner wall's face cuts across it.
  if (backU < 0) return hull([...square, endV, plus(node, normalU, b / -cos)]);
  if (backV < 0) return hull([...square, endU, plus(node, normalV, a / -cos)]);
  const reach = REACH * Math.max(u.half, v.half);
  if (Math.hypot(a, backU) <= reach) {
    const tip = plus(plus(node, normalU, a), u.along, -backU);
    // Nearly every joint: there is no more to it than these four corners.
    return isExact && backU > SAME && backV > SAME ? [node, endV, tip, endU] : hull([...square, endU, endV, tip]);
  }
  return hull([...square, endU, endV, ...[u, v].map((arm, i) => faceAt(arm, i === 0 ? normalU : normalV, reach))]);
}

/** The point of a wall's face, run on past the node, that is so far from the node. */
function faceAt({ at, along, half }: Arm, normal: XY, reach: Mm): XY {
  return plus(plus(at, normal, half), along, -Math.sqrt(reach * reach - half * half));
}

/**
 * What stands for the joints of very many walls at one node: a ring about all that any of them could reach, so that no body is
 * lost. Clockwise on screen.
 *
 * @param more how far beside the node walls may meet, mm
 */
export function crowdedRing(node: XY, half: Mm, more: Mm = 0): Ring {
  const radius = (REACH * half + more) / Math.cos(Math.PI / CROWD_CORNERS);
  return Array.from({ length: CROWD_CORNERS }, (_, i): XY => {
    const angle = (2 * Math.PI * i) / CROWD_CORNERS;
    return [node[0] + radius * Math.cos(angle), node[1] + radius * Math.sin(angle)];
  });
}

const CROWD_CORNERS = 64;

function plus(p: XY, way: XY, far: Mm): XY {
  return [p[0] + way[0] * far, p[1] + way[1] * far];
}

/** The convex hull; null when it has no breadth. */
function hull(points: readonly XY[]): Ring | null {
  const ring = convexHull(points, SAME);
  return ring.length >= 3 ? ring : null;
}
