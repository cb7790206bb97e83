import type { Mm, XY } from '../plan/model.ts';
import type { Line } from '../plane/types.ts';
import { gapToFace, inFront, intoRoom, type Outline } from './past-face.ts';
import type { Faces } from './room-faces.ts';
import { onGrid, type SnapOptions } from './snap.ts';

/** A gap smaller than this is none, mm: the dust of arithmetic. */
const DUST: Mm = 1e-6;
/** So many faces at the most push one thing: two of a corner, one of a pier, and one to spare. */
const MOST_PUSHES = 6;

/**
 * How to move things by about `by`: out of the walls that they would reach into, to the side that the hand is on; drawn up to
 * faces that come near (two where they stand in a corner of the room); and else by whole steps of the grid for `lead`.
 * @param faces the wall faces of the room that the hand is in; null outdoors, where nothing draws or pushes
 */
export function snapMove(
  outlines: readonly Outline[],
  lead: XY | null,
  by: XY,
  faces: Faces | null,
  options: Pick<SnapOptions, 'reach' | 'grid'>,
): Move {
  const corner = lead ?? outlines[0]?.points[0];
  const held: Move = faces ? drawnUp(outlines, by, faces, options.reach) : { by, guides: [] };
  const [only, second] = held.guides;
  if (second) return held;
  const stepped = only ? slideOnGrid(corner, held.by, only, options.grid) : gridMove(corner, by, options.grid);
  // No step of the grid takes it into a wall.
  const clear = !faces || facesBefore(faces).every((face) => (leastGap(outlines, stepped, face) ?? 0) >= -DUST);
  return { by: clear ? stepped : held.by, guides: held.guides };
}

interface Move {
  readonly by: XY;
  /** The faces that hold it. */
  readonly guides: readonly Line[];
}

/** How to move things out of the walls of their room, from where they stand: no way at all where they are in none. */
export function pushedOut(outlines: readonly Outline[], by: XY, faces: Faces): Move {
  let now = by;
  const guides: Line[] = [];
  for (let push = 0; push < MOST_PUSHES; push++) {
    const [deepest] = facesBefore(faces)
      .flatMap((face) => {
        const gap = leastGap(outlines, now, face);
        return gap !== null && gap < -DUST ? [{ face, gap }] : [];
      })
      // The shortest way out first: it may take the thing out of the others too.
      .sort((a, b) => b.gap - a.gap);
    if (!deepest) break;
    now = shifted(now, deepest.face, -deepest.gap, guides.at(-1));
    guides.push(deepest.face);
  }
  return { by: now, guides: guides.filter((face, index) => guides.indexOf(face) === index).slice(-2) };
}

/** Out of the walls, then up to what is near. */
function drawnUp(outlines: readonly Outline[], by: XY, faces: Faces, reach: Mm): Move {
  const out = pushedOut(outlines, by, faces);
  let now = out.by;
  const guides = [...out.guides];
  while (guides.length < 2) {
    const [near] = facesBefore(faces)
      .flatMap((face) => {
        const gap = leastGap(outlines, now, face);
        const held = guides.some((other) => other === face || parallel(other, face));
        return gap !== null && gap >= -DUST && gap <= reach && !held ? [{ face, gap }] : [];
      })
      .sort((a, b) => a.gap - b.gap);
    if (!near) break;
    now = shifted(now, near.face, -near.gap, guides[0]);
    guides.push(near.face);
  }
  return { by: now, guides };
}

/** The faces that the hand is in front of: a wall of the room that it stands behind is another wall's business. */
export function facesBefore({ lines, from }: Faces): readonly Line[] {
  return lines.filter((face) => inFront(face, from) >= -DUST);
}

function leastGap(outlines: readonly Outline[], by: XY, face: Line): Mm | null {
  let least: Mm | null = null;
  for (const outline of outlines) {
    const gap = gapToFace(outline, by, face);
    if (gap !== null && (least === null || gap < least)) least = gap;
  }
  return least;
}

/** `by` and so far more into the room, square to the face; along the face that holds already, where one does. */
function shifted(by: XY, face: Line, into: Mm, held: Line | undefined): XY {
  const [nx, ny] = intoRoom(face);
  if (!held || parallel(held, face)) return [by[0] + nx * into, by[1] + ny * into];
  const [hx, hy] = intoRoom(held);
  const [ux, uy] = [hy, -hx];
  const far = into / (ux * nx + uy * ny);
  return [by[0] + ux * far, by[1] + uy * far];
}

/** Along the face by whole steps, as far as the page's grid allows: only where the face runs along the page. */
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

/** Nearly so: within about a degree. */
function parallel(a: Line, b: Line): boolean {
  const [ax, ay] = intoRoom(a);
  const [bx, by] = intoRoom(b);
  return Math.abs(ax * by - ay * bx) < 0.02;
}
