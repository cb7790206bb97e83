import { bodyDistance } from '../body.ts';
import type { Mm, XY } from '../plan/model.ts';
import { type Grown, Scratch } from '../region/free-boundary.ts';
import { Nearby } from '../region/nearby.ts';
import { wallBodies } from './bodies.ts';
import { type Face, type Faces, OUTDOORS } from './faces.ts';
import { faceFloor, standingBodies } from './floors.ts';
import type { WallGraph } from './graph.ts';

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
 * Says of a face whether it is nowhere wider than a cavity: nothing is left of it when every wall is so much thicker. Since all
 * walls count, no wall that is added makes a cavity wider.
 */
export function cavityTest(graph: WallGraph, faces: Faces): (face: number, within: XY) => boolean {
  let thick: { readonly zones: readonly Grown[]; readonly nearby: Nearby } | null = null;
  return (face, within) => {
    if (!thick) {
      const zones = standingBodies(wallBodies(graph, faces, (CAVITY + CAVITY_SLACK) / 2).standing);
      thick = { zones, nearby: new Nearby(zones) };
    }
    // Of most rooms the middle is free: no more need be asked.
    if (!thick.zones.some(({ body }) => bodyDistance(body, ...within) === 0)) return false;
    return faceFloor(faces.faces[face] as Face, thick.nearby, new Scratch()).area < LEAST_FLOOR;
  };
}
