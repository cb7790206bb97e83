import type { Mm, XY } from './plan/model.ts';
import { distance, nearestOnSegment } from './point.ts';
import { type Line, onGrid, type SnapOptions, type SnapTargets } from './snap.ts';

/**
 * How to move things whose corners are `corners` by about `by`: drawn up to wall faces that a corner comes near (two
 * faces where it stands in a corner of the room), and else by whole steps of the grid for the first corner.
 */
export function snapMove(
  corners: readonly XY[],
  by: XY,
  targets: SnapTargets,
  options: Pick<SnapOptions, 'reach' | 'grid'>,
): { readonly by: XY; readonly guides: readonly Line[] } {
  const first = nearestFace(corners, by, targets.faces, options.reach, null);
  if (!first) return { by: gridMove(corners[0], by, options.grid), guides: [] };
  const once: XY = [by[0] + first.shift[0], by[1] + first.shift[1]];
  const second = nearestFace(corners, once, targets.faces, options.reach, first.face);
  if (!second) return { by: slideOnGrid(corners[0], once, first.face, options.grid), guides: [first.face] };
  // Along the first face, so that the first hold is kept.
  const slid = slideOnto(second.shift, first.face, second.face);
  return slid
    ? { by: [once[0] + slid[0], once[1] + slid[1]], guides: [first.face, second.face] }
    : { by: once, guides: [first.face] };
}

interface FaceHold {
  readonly face: Line;
  readonly shift: XY;
}

function nearestFace(
  corners: readonly XY[],
  by: XY,
  faces: readonly Line[],
  reach: Mm,
  besides: Line | null,
): FaceHold | null {
  let best: FaceHold | null = null;
  let least = reach;
  for (const face of faces) {
    if (besides && parallel(face, besides)) continue;
    for (const [x, y] of corners) {
      const corner: XY = [x + by[0], y + by[1]];
      const foot = nearestOnSegment(corner, face[0], face[1]);
      const far = distance(corner, foot);
      if (far <= least) {
        least = far;
        best = { face, shift: [foot[0] - corner[0], foot[1] - corner[1]] };
      }
    }
  }
  return best;
}

/** The shift along face `a` that makes up the distance `shift` to face `b`; null when they are nearly parallel. */
function slideOnto(shift: XY, a: Line, b: Line): XY | null {
  const [ax, ay] = unit(a);
  const [bx, by] = unit(b);
  const sine = ax * by - ay * bx;
  if (Math.abs(sine) < 0.1) return null;
  const short = shift[0] * by - shift[1] * bx;
  return [(ax * short) / sine, (ay * short) / sine];
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

function parallel(a: Line, b: Line): boolean {
  const [ax, ay] = unit(a);
  const [bx, by] = unit(b);
  return Math.abs(ax * by - ay * bx) < 0.02;
}

function unit([a, b]: Line): XY {
  const length = distance(a, b) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
