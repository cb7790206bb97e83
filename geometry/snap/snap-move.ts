import type { Mm, XY } from '../plan/model.ts';
import type { Line } from '../plane/types.ts';
import { distanceInFront, gapToFace, inwardNormal, type Outline } from './face-gap.ts';
import type { RoomFaces } from './room-faces.ts';
import { onGrid, type SnapOptions } from './snap-point.ts';

/** Rounding error, mm. */
const ROUNDING: Mm = 1e-6;
/** At most this many faces push one item: more than the two of a corner and one of a pier. */
const MOST_CORRECTIONS = 6;

/**
 * Returns how to move items by about `by`: out of walls that they would reach into, to the side of the pointer;
 * snapped to nearby faces (two in a corner of the room); otherwise by whole grid steps of `lead`.
 *
 * @param faces the wall faces of the room that contains the pointer; null outdoors, where nothing snaps or pushes
 */
export function snapMove(
  outlines: readonly Outline[],
  lead: XY | null,
  by: XY,
  faces: RoomFaces | null,
  options: Pick<SnapOptions, 'reach' | 'grid'>,
): Move {
  const corner = lead ?? outlines[0]?.points[0];
  const snapped: Move = faces ? snapToFaces(outlines, by, faces, options.reach) : { by, guides: [] };
  const [only, second] = snapped.guides;
  if (second) return snapped;
  const stepped = only ? slideOnGrid(corner, snapped.by, only, options.grid) : gridMove(corner, by, options.grid);
  // A grid step must not move it into a wall.
  const clear = !faces || facesInFront(faces).every((face) => (leastGap(outlines, stepped, face) ?? 0) >= -ROUNDING);
  return { by: clear ? stepped : snapped.by, guides: snapped.guides };
}

interface Move {
  readonly by: XY;
  /** The faces that the items snapped to. */
  readonly guides: readonly Line[];
}

/** Returns `by` changed so that the items moved by it are out of the walls of their room; unchanged if they are in none. */
export function pushedOut(outlines: readonly Outline[], by: XY, faces: RoomFaces): Move {
  let now = by;
  const guides: Line[] = [];
  for (let push = 0; push < MOST_CORRECTIONS; push++) {
    const [deepest] = facesInFront(faces)
      .flatMap((face) => {
        const gap = leastGap(outlines, now, face);
        return gap !== null && gap < -ROUNDING ? [{ face, gap }] : [];
      })
      // The smallest correction comes first, because it may resolve the others too.
      .sort((a, b) => b.gap - a.gap);
    if (!deepest) break;
    now = shifted(now, deepest.face, -deepest.gap, guides.at(-1));
    guides.push(deepest.face);
  }
  return { by: now, guides: guides.filter((face, index) => guides.indexOf(face) === index).slice(-2) };
}

/** Returns the move that takes the items out of the walls and then snaps them to nearby faces. */
function snapToFaces(outlines: readonly Outline[], by: XY, faces: RoomFaces, reach: Mm): Move {
  const out = pushedOut(outlines, by, faces);
  let now = out.by;
  const guides = [...out.guides];
  while (guides.length < 2) {
    const [near] = facesInFront(faces)
      .flatMap((face) => {
        const gap = leastGap(outlines, now, face);
        const snapped = guides.some((other) => other === face || parallel(other, face));
        return gap !== null && gap >= -ROUNDING && gap <= reach && !snapped ? [{ face, gap }] : [];
      })
      .sort((a, b) => a.gap - b.gap);
    if (!near) break;
    now = shifted(now, near.face, -near.gap, guides[0]);
    guides.push(near.face);
  }
  return { by: now, guides };
}

/** Returns the faces that the pointer is in front of: a wall behind the pointer belongs to another part of the room. */
export function facesInFront({ lines, from }: RoomFaces): readonly Line[] {
  return lines.filter((face) => distanceInFront(face, from) >= -ROUNDING);
}

function leastGap(outlines: readonly Outline[], by: XY, face: Line): Mm | null {
  let least: Mm | null = null;
  for (const outline of outlines) {
    const gap = gapToFace(outline, by, face);
    if (gap !== null && (least === null || gap < least)) least = gap;
  }
  return least;
}

/** Returns `by` plus a distance into the room, square to the face; along the face already snapped to, if any. */
function shifted(by: XY, face: Line, into: Mm, snapped: Line | undefined): XY {
  const [nx, ny] = inwardNormal(face);
  if (!snapped || parallel(snapped, face)) return [by[0] + nx * into, by[1] + ny * into];
  const [hx, hy] = inwardNormal(snapped);
  const [ux, uy] = [hy, -hx];
  const far = into / (ux * nx + uy * ny);
  return [by[0] + ux * far, by[1] + uy * far];
}

/** Returns `by` moved along the face to the next grid step, if the face is parallel to a page axis; else unchanged. */
function slideOnGrid(corner: XY | undefined, by: XY, face: Line, grid: Mm | null): XY {
  if (!corner || !grid) return by;
  const [gx, gy] = gridMove(corner, by, grid);
  if (face[0][1] === face[1][1]) return [gx, by[1]];
  return face[0][0] === face[1][0] ? [by[0], gy] : by;
}

function gridMove(corner: XY | undefined, by: XY, grid: Mm | null): XY {
  if (!corner || !grid) return by;
  const [x, y] = onGrid([corner[0] + by[0], corner[1] + by[1]], grid);
  return [x - corner[0], y - corner[1]];
}

/** Returns whether two faces are parallel within about a degree. */
function parallel(a: Line, b: Line): boolean {
  const [ax, ay] = inwardNormal(a);
  const [bx, by] = inwardNormal(b);
  return Math.abs(ax * by - ay * bx) < 0.02;
}
