import type { Geom, Geos, Point, Points } from './geos.ts';
import { apart, bearing, dot, meeting, middle, minus, plus, quarter, unit } from './plane.ts';
import type { Stretch } from './walls.ts';

/**
 * The contract says "joined square (mitred)" and no more. Where it is silent the oracle follows what the engine writes
 * down for itself: a corner that would reach more than ten half-thicknesses from its node is cut square.
 */
const LIMIT = 10;
/** A wall drawn without thickness still parts two rooms, mm. */
const THINNEST_HALF = 0.001;

/** One end of a stretch, seen from its node. */
interface Arm {
  readonly stretch: number;
  readonly node: Point;
  readonly along: Point;
  readonly length: number;
  readonly half: number;
  /** Directions of the cuts on both sides, and what fills the gap beside a square cut. */
  clockwise: Point;
  counter: Point;
  readonly fills: Points[];
}

/**
 * The bodies of all stretches. Each is a strip of half the thickness on either side of the centre-line, cut at both ends
 * along the lines that lead from the node to where its faces meet the faces of its neighbours.
 */
export function pieceBodies(geos: Geos, stretches: readonly Stretch[]): Geom[][] {
  const arms = stretches.map((stretch, k) => armsOf(stretch, k));
  for (const around of nodesOf(arms.flat())) {
    around.sort((a, b) => bearing(a.along) - bearing(b.along));
    around.forEach((arm, i) => {
      const next = around[(i + 1) % around.length] as Arm;
      if (next !== arm) cutSector(arm, next);
    });
  }
  return arms.map(([start, end]) => {
    const strip = geos.area([stripOf(start, end)]);
    const cut = geos.intersection(geos.intersection(strip, coneOf(geos, start)), coneOf(geos, end));
    const fills = [...start.fills, ...end.fills].map((ring) => geos.area([ring]));
    return [cut, ...fills];
  });
}

function armsOf({ ends: [a, b], wall }: Stretch, stretch: number): [Arm, Arm] {
  const arm = (node: Point, far: Point): Arm => {
    const along = unit(minus(far, node));
    const half = Math.max(THINNEST_HALF, wall.thickness / 2);
    // Until a neighbour is found: a free end, cut square.
    const [clockwise, counter] = [quarter(along), quarter(minus([0, 0], along))];
    return { stretch, node, along, length: apart(node, far), half, clockwise, counter, fills: [] };
  };
  return [arm(a, b), arm(b, a)];
}

function nodesOf(arms: readonly Arm[]): Arm[][] {
  const nodes = new Map<string, Arm[]>();
  for (const arm of arms) {
    const key = `${arm.node[0]} ${arm.node[1]}`;
    nodes.set(key, [...(nodes.get(key) ?? []), arm]);
  }
  return [...nodes.values()];
}

/** The sector from `arm` clockwise to `next`: cuts the facing sides of both. */
function cutSector(arm: Arm, next: Arm): void {
  const { node } = arm;
  const turn = (bearing(next.along) - bearing(arm.along) + 2 * Math.PI) % (2 * Math.PI);
  const [armCorner, nextCorner] = [
    plus(node, quarter(arm.along), arm.half),
    plus(node, quarter(next.along), -next.half),
  ];
  const corner = meeting(armCorner, arm.along, nextCorner, next.along);
  const outward: Point = [Math.cos(bearing(arm.along) + turn / 2), Math.sin(bearing(arm.along) + turn / 2)];
  const isFar = !corner || apart(corner, node) > LIMIT * Math.max(arm.half, next.half);
  if (isFar && Math.cos(turn) < 0) {
    // Straight on, or nearly, as a thinner wall: square ends on the narrow side, run on into the wide side.
    if (turn < Math.PI) return;
    arm.clockwise = outward;
    next.counter = outward;
  } else if (isFar && turn > Math.PI) {
    const between = middle(armCorner, nextCorner);
    arm.fills.push([node, armCorner, between]);
    next.fills.push([node, between, nextCorner]);
  } else if (corner && turn < Math.PI && !reaches(arm, next, corner)) {
    // The faces would meet beyond the end of one of them: each runs up to the other's centre-line.
    if (turn < Math.PI / 2) {
      arm.clockwise = next.along;
      next.counter = arm.along;
    }
  } else if (corner) {
    const out = minus(corner, node);
    // Half the thickness on either side up to the node: on the wide side a corner short of it cuts nothing off.
    const wide = turn > Math.PI;
    if (!wide || dot(out, arm.along) < 0) arm.clockwise = unit(out);
    if (!wide || dot(out, next.along) < 0) next.counter = unit(out);
  }
}

function reaches(arm: Arm, next: Arm, corner: Point): boolean {
  const out = minus(corner, arm.node);
  return dot(out, arm.along) <= arm.length && dot(out, next.along) <= next.length;
}

/** The strip along the stretch, long enough at both ends for every cut. */
function stripOf(start: Arm, end: Arm): Points {
  const spare = 2 * LIMIT * 200 + start.half * LIMIT;
  const across = quarter(start.along);
  const a = plus(start.node, start.along, -spare);
  const b = plus(end.node, start.along, spare);
  return [
    plus(a, across, start.half),
    plus(b, across, start.half),
    plus(b, across, -start.half),
    plus(a, across, -start.half),
  ];
}

/** What an arm may take of the plane around its node: from its counter-clockwise cut through its own direction to the other. */
function coneOf(geos: Geos, arm: Arm): Geom {
  const radius = 4 * (arm.length + 2 * LIMIT * 200 + arm.half * LIMIT);
  const from = bearing(arm.counter);
  const inner = (bearing(arm.along) - from + 2 * Math.PI) % (2 * Math.PI);
  const outer = (bearing(arm.clockwise) - bearing(arm.along) + 2 * Math.PI) % (2 * Math.PI);
  const ring: Point[] = [arm.node];
  const steps = 8;
  for (let i = 0; i <= steps; i++) ring.push(at(arm.node, radius, from + (inner * i) / steps));
  for (let i = 1; i <= steps; i++) ring.push(at(arm.node, radius, from + inner + (outer * i) / steps));
  return geos.area([ring]);
}

function at(node: Point, radius: number, angle: number): Point {
  return plus(node, [Math.cos(angle), Math.sin(angle)], radius);
}
