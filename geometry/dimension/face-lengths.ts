import type { LevelModel, WallPiece } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { lineCrossing, lineMoved } from '../plane/line.ts';
import { cross, distance } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';
import { endPiece } from './end-piece.ts';
import type { Dimension } from './room-dimensions.ts';
import { HALVES_BEYOND, type TapedBy } from './taped-by.ts';

/** A face this close to half the thickness of a wall from its center-line belongs to that wall, mm. */
const ON_FACE: Mm = 1;

/**
 * Returns how much longer than the face itself the length is when taped in this way, mm. Inside: 0. Outside: at each end
 * the wall that ends the face, measured along the outer face at a corner of the building. Center-lines: half of that. It
 * does not change while the wall at an end is moved square to itself. Negative where the room continues around the end.
 */
export function beyondFace(model: LevelModel, dimension: Dimension, by: TapedBy): Mm {
  const share = (HALVES_BEYOND[by] + 1) / 2;
  if (share === 0) return 0;
  const { from, to } = dimension;
  return share * (beyondEnd(model, dimension, [to, from]) + beyondEnd(model, dimension, [from, to]));
}

/** Returns how far the far face of the wall that ends a face is beyond the face's second point, mm; 0 for no wall. */
function beyondEnd(model: LevelModel, { outward }: Dimension, [start, corner]: Line): Mm {
  const end = endPiece(model, [start, corner], corner);
  if (!end) return 0;
  const length = distance(start, corner) || 1;
  const u: XY = [(corner[0] - start[0]) / length, (corner[1] - start[1]) / length];
  const own = ownPiece(model, outward, u, corner, end);
  const far = farFace(end, corner);
  // Outside lengths are taped along the outer face; where the wall continues behind the one that ends the face, along the face itself.
  const along: Line = own ? shifted([start, corner], outward, own.thickness) : [start, corner];
  const at = lineCrossing(along, far);
  return at ? (at[0] - corner[0]) * u[0] + (at[1] - corner[1]) * u[1] : 0;
}

/** Returns the wall piece behind a face at its corner, if it ends there; null if it continues, or if there is none. */
function ownPiece(model: LevelModel, outward: XY, u: XY, corner: XY, end: WallPiece): WallPiece | null {
  const beside = model.pieces.filter(({ from, to, thickness }) => {
    const run = distance(from, to) || 1;
    const slant = Math.abs((to[0] - from[0]) * outward[0] + (to[1] - from[1]) * outward[1]) / run;
    const off = (from[0] - corner[0]) * outward[0] + (from[1] - corner[1]) * outward[1];
    return slant < 1e-3 && Math.abs(off - thickness / 2) <= ON_FACE;
  });
  const reach = ({ from, to }: WallPiece): readonly [Mm, Mm] => {
    const ends = [from, to].map(([x, y]) => (x - corner[0]) * u[0] + (y - corner[1]) * u[1]);
    return [Math.min(...ends), Math.max(...ends)];
  };
  const [own] = beside.filter((piece) => reach(piece)[0] < -ON_FACE).sort((a, b) => reach(b)[1] - reach(a)[1]);
  if (!own) return null;
  const node = nodeAhead(own, end, corner, u);
  return node === null || beside.some((piece) => reach(piece)[1] > node + ON_FACE) ? null : own;
}

/** Returns how far ahead of the corner the center-lines of the two walls meet, mm. */
function nodeAhead(own: WallPiece, end: WallPiece, corner: XY, u: XY): Mm | null {
  const at = lineCrossing([own.from, own.to], [end.from, end.to]);
  return at && (at[0] - corner[0]) * u[0] + (at[1] - corner[1]) * u[1];
}

/** Returns the face of a wall on the other side from a point of its near face. */
function farFace({ from, to, thickness }: WallPiece, near: XY): Line {
  return lineMoved([from, to], Math.sign(cross(from, to, near)) * (thickness / 2));
}

function shifted([a, b]: Line, [x, y]: XY, by: Mm): Line {
  return [
    [a[0] + x * by, a[1] + y * by],
    [b[0] + x * by, b[1] + y * by],
  ];
}
