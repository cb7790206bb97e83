import { Scratch } from '../arrangement/free-boundary.ts';
import { NearbyZones } from '../arrangement/nearby-zones.ts';
import type { GrownZone } from '../arrangement/zone.ts';
import type { Mm, XY } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { distance } from '../plane/point.ts';
import { wallBodies } from './bodies.ts';
import { type Face, type Faces, OUTDOORS } from './faces.ts';
import { faceFloor, solidZones } from './floors.ts';
import { mainWall, type WallGraph } from './graph.ts';
import { halfThickness } from './rectangles.ts';
import { sliversOf } from './slivers.ts';
import type { LevelModel } from './types.ts';

/** An unlabeled space nowhere wider than this between its walls is a cavity behind studs, mm. */
const CAVITY: Mm = 305;

/** Measuring tolerance for the width of a cavity, mm. */
const CAVITY_SLACK: Mm = 0.1;

/** A smaller floor is what remains of a face that walls fill, mm². */
export const SMALLEST_FLOOR = 1;

/** What is known of a face before the outdoors is determined. */
export interface FaceKind {
  readonly hasFloor: boolean;
  readonly hasLabel: boolean;
  /** Whether it is nowhere wider than a cavity. Lazy. */
  readonly isNarrow: () => boolean;
}

/**
 * Returns which edges have the outdoors on one side: the unbounded face, and faces reached from it through walls
 * without crossing a floor, either because walls fill them or because they are unlabeled cavities.
 */
export function edgesOutdoors(graph: WallGraph, traced: Faces, kinds: readonly FaceKind[]): boolean[] {
  const { edges } = graph;
  const { faces, faceOf } = traced;
  const linksOf = faces.map((): number[] => []);
  const reached = new Set<number>();
  const open: number[] = [];
  const reach = (face: number) => {
    if (face === OUTDOORS || reached.has(face)) return;
    const { hasFloor, hasLabel, isNarrow } = kinds[face] as FaceKind;
    if (hasFloor && (hasLabel || !isNarrow())) return;
    reached.add(face);
    open.push(face);
  };
  // Connections of the flood fill: the faces of each edge, and faces that are one space except for a pinch.
  const { between, joined } = sliversOf(graph, traced);
  const links: (readonly number[])[] = edges.map((_, k) => [faceOf[2 * k] as number, faceOf[2 * k + 1] as number]);
  links.push(...joined);
  links.forEach((linked, k) => {
    for (const face of linked) if (face !== OUTDOORS) (linksOf[face] as number[]).push(k);
  });
  for (const linked of links) if (linked.includes(OUTDOORS)) linked.forEach(reach);
  for (let face = open.pop(); face !== undefined; face = open.pop()) {
    for (const k of linksOf[face] as number[]) (links[k] as readonly number[]).forEach(reach);
  }
  const isOutdoors = (face: number) => face === OUTDOORS || reached.has(face);
  return edges.map(
    (_, k) => (links[k] as readonly number[]).some(isOutdoors) || (between.get(k) ?? []).some(isOutdoors),
  );
}

/**
 * Returns a predicate: whether a face is nowhere wider than a cavity, that is, nothing of it remains when every wall is
 * thickened. Since all walls count, adding a wall never makes a cavity wider.
 */
export function cavityTest(graph: WallGraph, faces: Faces): (face: number, within: XY) => boolean {
  let ways: readonly Way[] | null = null;
  let thick: { readonly zones: readonly GrownZone[]; readonly nearby: NearbyZones } | null = null;
  return (face, within) => {
    ways ??= waysOf(graph);
    // In most rooms the middle of the floor is clear of all thickened walls, and the rest is not needed.
    if (isClear(graph, ways, faces, within, (CAVITY + CAVITY_SLACK) / 2)) return false;
    if (!thick) {
      const zones = solidZones(wallBodies(graph, faces, (CAVITY + CAVITY_SLACK) / 2).solids);
      thick = { zones, nearby: new NearbyZones(zones) };
    }
    if (!thick.zones.some(({ body }) => bodyDistance(body, ...within) === 0)) return false;
    return faceFloor(faces.faces[face] as Face, thick.nearby, new Scratch()).area < SMALLEST_FLOOR;
  };
}

const waysOf = ({ nodes, edges }: WallGraph): readonly Way[] =>
  edges.map(({ from, to, walls }) => wayOf(nodes[from] as XY, nodes[to] as XY, halfThickness(mainWall(walls))));

/** Returns whether a point is certainly clear of all thickened walls and joints, without building any joint. */
function isClear({ nodes }: WallGraph, ways: readonly Way[], { around }: Faces, p: XY, extra: Mm): boolean {
  for (const {
    at,
    along: [ux, uy],
    length,
    half,
  } of ways) {
    const [x, y] = [p[0] - at[0], p[1] - at[1]];
    const s = x * ux + y * uy;
    if (s >= -NODE_SHIFT && s <= length + NODE_SHIFT && Math.abs(y * ux - x * uy) <= half + extra + NODE_SHIFT)
      return false;
  }
  const widest = ways.reduce((most, { half }) => Math.max(most, half), 0) + extra + NODE_SHIFT;
  return nodes.every((node, n) => {
    const [x, y] = [p[0] - node[0], p[1] - node[1]];
    let behind = 0;
    for (const h of around[n] as number[]) {
      const [ux, uy] = (ways[h >> 1] as Way).along;
      const sign = h & 1 ? -1 : 1;
      // A joint is behind the square ends of both its walls, and no farther from either line than the thicker wall's
      // thickness.
      if (sign * (x * ux + y * uy) <= NODE_SHIFT && Math.abs(y * ux - x * uy) <= widest) behind++;
    }
    return behind < 2;
  });
}

/** Larger than the distance by which merging may move a node, mm. */
const NODE_SHIFT: Mm = 1;

interface Way {
  readonly at: XY;
  readonly along: XY;
  readonly length: Mm;
  readonly half: Mm;
}

function wayOf(a: XY, b: XY, half: Mm): Way {
  const length = distance(a, b);
  return { at: a, along: [(b[0] - a[0]) / length, (b[1] - a[1]) / length], length, half };
}

/**
 * Returns the ids of walls with an outside piece: the outline of the level. Empty while no room is closed, unless
 * `side` says otherwise.
 */
export function outsideWallIds({ pieces }: LevelModel): ReadonlySet<string> {
  return new Set(pieces.filter(({ outside }) => outside).map(({ wall }) => wall.id));
}
