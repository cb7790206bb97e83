import { Scratch } from '../arrangement/free-boundary.ts';
import { Nearby } from '../arrangement/nearby.ts';
import type { Grown } from '../arrangement/zone.ts';
import type { Mm, XY } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { distance } from '../plane/point.ts';
import { wallBodies } from './bodies.ts';
import { type Face, type Faces, OUTDOORS } from './faces.ts';
import { faceFloor, standingBodies } from './floors.ts';
import { mainWall, type WallGraph } from './graph.ts';
import { halfOf } from './rectangles.ts';
import { sliversOf } from './slivers.ts';

/** An unlabelled space that is nowhere wider than this between its walls, mm, is a cavity behind studs. */
const CAVITY: Mm = 305;

/** A tape does not tell this from the width of a cavity, mm. */
const CAVITY_SLACK: Mm = 0.1;

/** A floor of less than this, square mm, is what walls leave of a face that they fill. */
export const LEAST_FLOOR = 1;

/** What is known of a face before it is said whether the outdoors reaches into it. */
export interface FaceKind {
  readonly hasFloor: boolean;
  readonly hasLabel: boolean;
  /** Whether it is nowhere wider than a cavity. Asked only where it matters. */
  readonly isNarrow: () => boolean;
}

/**
 * Which edges have the outdoors on one side: the unbounded face, and the faces that one reaches from it through walls without
 * setting foot on a floor, be it that walls fill them or that they are unlabelled cavities.
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
  // What the outdoors reaches through: the faces of each edge, then those that are one space but for a pinch.
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
 * Says of a face whether it is nowhere wider than a cavity: nothing is left of it when every wall is so much thicker. Since all
 * walls count, no wall that is added makes a cavity wider.
 */
export function cavityTest(graph: WallGraph, faces: Faces): (face: number, within: XY) => boolean {
  let thick: { readonly zones: readonly Grown[]; readonly nearby: Nearby } | null = null;
  return (face, within) => {
    // Of most rooms the middle is free: no more need be asked.
    if (isClear(graph, faces, within, (CAVITY + CAVITY_SLACK) / 2)) return false;
    if (!thick) {
      const zones = standingBodies(wallBodies(graph, faces, (CAVITY + CAVITY_SLACK) / 2).standing);
      thick = { zones, nearby: new Nearby(zones) };
    }
    if (!thick.zones.some(({ body }) => bodyDistance(body, ...within) === 0)) return false;
    return faceFloor(faces.faces[face] as Face, thick.nearby, new Scratch()).area < LEAST_FLOOR;
  };
}

/** Whether a point is surely clear of all walls and joints, were every wall so much thicker on either side; no joint is built for it. */
function isClear({ nodes, edges }: WallGraph, { around }: Faces, p: XY, more: Mm): boolean {
  const ways = edges.map(({ from, to, walls }) => wayOf(nodes[from] as XY, nodes[to] as XY, halfOf(mainWall(walls))));
  for (const {
    at,
    along: [ux, uy],
    length,
    half,
  } of ways) {
    const [x, y] = [p[0] - at[0], p[1] - at[1]];
    const s = x * ux + y * uy;
    if (s >= -SPARE && s <= length + SPARE && Math.abs(y * ux - x * uy) <= half + more + SPARE) return false;
  }
  const widest = ways.reduce((most, { half }) => Math.max(most, half), 0) + more + SPARE;
  return nodes.every((node, n) => {
    const [x, y] = [p[0] - node[0], p[1] - node[1]];
    let behind = 0;
    for (const h of around[n] as number[]) {
      const [ux, uy] = (ways[h >> 1] as Way).along;
      const sign = h & 1 ? -1 : 1;
      // A joint lies behind the square ends of both its walls, and no farther off either line than the thicker is wide.
      if (sign * (x * ux + y * uy) <= SPARE && Math.abs(y * ux - x * uy) <= widest) behind++;
    }
    return behind < 2;
  });
}

/** What a node may be moved by a touch, mm, and more. */
const SPARE: Mm = 1;

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
