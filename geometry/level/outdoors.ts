import type { Mm, XY } from '../plan/model.ts';
import { Scratch } from '../region/free-boundary.ts';
import { Nearby } from '../region/nearby.ts';
import { ringContains } from '../ring.ts';
import { type Face, type Faces, OUTDOORS } from './faces.ts';
import { faceFloor, standingBodies } from './floors.ts';
import { type GraphEdge, mainWall, type Run, type WallGraph } from './graph.ts';
import { jointRing } from './joints.ts';
import { halfOf, rectangle, rectangleRing } from './rectangles.ts';
import type { Ring } from './types.ts';

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
export function edgesOutdoors({ edges }: WallGraph, { faces, faceOf }: Faces, kinds: readonly FaceKind[]): boolean[] {
  const edgesOf = faces.map((): number[] => []);
  const reached = new Set<number>();
  const open: number[] = [];
  const reach = (face: number) => {
    if (face === OUTDOORS || reached.has(face)) return;
    const { hasFloor, hasLabel, isNarrow } = kinds[face] as FaceKind;
    if (hasFloor && (hasLabel || !isNarrow())) return;
    reached.add(face);
    open.push(face);
  };
  const sides = (k: number) => [faceOf[2 * k] as number, faceOf[2 * k + 1] as number];
  edges.forEach((_, k) => {
    for (const face of sides(k)) if (face !== OUTDOORS) (edgesOf[face] as number[]).push(k);
  });
  edges.forEach((_, k) => {
    if (sides(k).includes(OUTDOORS)) sides(k).forEach(reach);
  });
  for (let face = open.pop(); face !== undefined; face = open.pop()) {
    for (const k of edgesOf[face] as number[]) sides(k).forEach(reach);
  }
  return edges.map((_, k) => sides(k).some((face) => face === OUTDOORS || reached.has(face)));
}

/**
 * Whether a face is nowhere wider than a cavity: nothing is left of it when its walls are so much thicker.
 * @param within a point of its floor with much room around it
 */
export function isCavity(graph: WallGraph, faces: Faces, face: number, within: XY): boolean {
  const bodies = thickBodies(graph, faces, face);
  if (!bodies.some((ring) => ringContains(ring, within))) return false;
  return faceFloor(faces.faces[face] as Face, new Nearby(standingBodies(bodies)), new Scratch()).area < LEAST_FLOOR;
}

function thickBodies(graph: WallGraph, { around, faceOf }: Faces, face: number): Ring[] {
  const borders = (k: number) => faceOf[2 * k] === face || faceOf[2 * k + 1] === face;
  const more = (CAVITY + CAVITY_SLACK) / 2;
  const thick = (k: number, node: number | null) => {
    const edge = graph.edges[k] as GraphEdge;
    const wall = mainWall(edge.walls);
    const run = edge.runs.find(({ line }) => line.wall === wall) as Run;
    const { along } = rectangle(run.line.a, run.line.b, 0);
    const leaves = run.start === node;
    const half = halfOf(wall) + more;
    return { run, half, at: leaves ? run.from : run.to, along: leaves ? along : ([-along[0], -along[1]] as const) };
  };
  const bodies: Ring[] = [];
  const nodes = new Set<number>();
  graph.edges.forEach(({ from, to }, k) => {
    if (!borders(k)) return;
    const { run, half } = thick(k, null);
    bodies.push(rectangleRing(rectangle(run.from, run.to, half)));
    nodes.add(from).add(to);
  });
  for (const node of nodes) {
    const arms = (around[node] as number[]).map((h) => h >> 1).filter(borders);
    arms.forEach((k, i) => {
      for (const other of arms.slice(i + 1)) {
        const ring = jointRing(graph.nodes[node] as XY, thick(k, node), thick(other, node));
        if (ring) bodies.push(ring);
      }
    });
  }
  return bodies;
}
