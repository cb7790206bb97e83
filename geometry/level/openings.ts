import type { Mm, Opening, Wall, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { type Extent, ringExtent } from '../plane/extent.ts';
import { distance } from '../plane/point.ts';
import type { WallGraph } from './graph.ts';
import { CROSSING_SINE, SNAP_DISTANCE } from './tolerances.ts';
import type { OpeningBody } from './types.ts';

/** A shorter stretch shared by an opening and a wall is rounding, mm. */
const SHORTEST_SHARED: Mm = 0.01;

/** The host walls of openings, prepared for lookup. */
export interface HostWalls {
  readonly walls: ReadonlyMap<string, Wall>;
  /** The same walls, the thickest first. */
  readonly thickestFirst: readonly Wall[];
  /** The edges of each wall. */
  readonly edgesOf: ReadonlyMap<Wall, readonly number[]>;
}

/** Returns the walls of a level, prepared for the lookup of openings. */
export function hostWallsOf(walls: readonly Wall[], { edges }: WallGraph): HostWalls {
  const edgesOf = new Map<Wall, number[]>();
  edges.forEach((edge, k) => {
    for (const wall of edge.walls) {
      const own = edgesOf.get(wall);
      if (own) own.push(k);
      else edgesOf.set(wall, [k]);
    }
  });
  const thickestFirst = [...walls].sort((a, b) => b.thickness - a.thickness);
  return { walls: new Map(walls.map((wall) => [wall.id, wall])), thickestFirst, edgesOf };
}

/**
 * Returns the rectangle of an opening, as deep as the thickest wall there, and whether any part of it is in an outside
 * wall.
 *
 * @param isOutside per edge
 */
export function openingBody(
  opening: Opening,
  { walls, thickestFirst, edgesOf }: HostWalls,
  { nodes, edges }: WallGraph,
  isOutside: readonly boolean[],
): OpeningBody {
  const wall = walls.get(opening.wall);
  assert(wall !== undefined, `opening ${opening.id} is in wall ${opening.wall}, which is not on its level`);
  const frame = frameOf(wall);
  const { at, spot } = frame;
  const end = opening.offset + opening.width;
  const onEdges = (edgesOf.get(wall) ?? []).filter((k) => {
    const { from, to } = edges[k] as WallGraph['edges'][number];
    const [s, t] = [spot(nodes[from] as XY)[0], spot(nodes[to] as XY)[0]];
    return Math.min(Math.max(s, t), end) - Math.max(Math.min(s, t), opening.offset) > SHORTEST_SHARED;
  });
  let half = wall.thickness / 2;
  const near = ringExtent([
    at(opening.offset, -SNAP_DISTANCE),
    at(end, SNAP_DISTANCE),
    at(opening.offset, SNAP_DISTANCE),
    at(end, -SNAP_DISTANCE),
  ]);
  for (const other of thickestFirst) {
    if (other.thickness / 2 <= half) break;
    if (comesNear(other, near)) half = Math.max(half, depthBeside(other, frame, opening));
  }
  return {
    opening,
    // An opening on no edge: its wall has no known sides, so the stricter reading (outside) counts.
    outside: onEdges.length === 0 || onEdges.some((k) => isOutside[k]),
    body: [at(opening.offset, -half), at(end, -half), at(end, half), at(opening.offset, half)],
  };
}

function comesNear({ from, to }: Wall, { minX, minY, maxX, maxY }: Extent): boolean {
  if (Math.max(from[0], to[0]) < minX || Math.min(from[0], to[0]) > maxX) return false;
  return Math.max(from[1], to[1]) >= minY && Math.min(from[1], to[1]) <= maxY;
}

/** Converts between the page and a wall's own coordinates: distance along the wall from its start, and across it. */
interface Frame {
  readonly at: (s: Mm, t: Mm) => XY;
  readonly spot: (p: XY) => XY;
}

function frameOf({ from, to }: Wall): Frame {
  const length = distance(from, to);
  const ux = length > 0 ? (to[0] - from[0]) / length : 1;
  const uy = length > 0 ? (to[1] - from[1]) / length : 0;
  return {
    at: (s, t) => [from[0] + ux * s - uy * t, from[1] + uy * s + ux * t],
    spot: ([x, y]) => [(x - from[0]) * ux + (y - from[1]) * uy, (y - from[1]) * ux - (x - from[0]) * uy],
  };
}

/**
 * Returns half the thickness of a wall that coincides or nearly coincides with the stretch of an opening; 0 otherwise.
 */
function depthBeside(other: Wall, { spot }: Frame, { offset, width }: Opening): Mm {
  const [s0, t0] = spot(other.from);
  const [s1, t1] = spot(other.to);
  const from = Math.max(Math.min(s0, s1), offset);
  const to = Math.min(Math.max(s0, s1), offset + width);
  if (to - from <= SHORTEST_SHARED || Math.abs(t1 - t0) > CROSSING_SINE * Math.abs(s1 - s0)) return 0;
  const across = (s: Mm) => t0 + ((t1 - t0) * (s - s0)) / (s1 - s0);
  const [first, last] = [across(from), across(to)];
  const crosses = first > 0 !== last > 0;
  return crosses || Math.min(Math.abs(first), Math.abs(last)) <= SNAP_DISTANCE ? other.thickness / 2 : 0;
}
