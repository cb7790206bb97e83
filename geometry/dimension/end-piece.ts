import type { LevelModel, WallPiece } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';

/** A wall's face is looked up within this distance of a corner, mm. */
const AT_CORNER: Mm = 1;
/** Sine of the angle below which a wall runs along a face and does not end it. */
const ALONG = 0.1;

/**
 * Returns the wall piece that ends a face at `corner`: the nearest one, not parallel to the face, with one of its own
 * faces at that corner. Null at the end of a free-standing wall.
 */
export function endPiece(model: LevelModel, face: Line, corner: XY): WallPiece | null {
  const length = distance(...face) || 1;
  const u: XY = [(face[1][0] - face[0][0]) / length, (face[1][1] - face[0][1]) / length];
  let best: WallPiece | null = null;
  let least = Number.POSITIVE_INFINITY;
  // At a corner that turns into the room, the face may begin beyond the end of the piece, by half of the other wall, which may be thicker.
  const widest = model.pieces.reduce((most, { thickness }) => Math.max(most, thickness), 0);
  for (const piece of model.pieces) {
    const { from, to, thickness } = piece;
    const run = distance(from, to);
    if (run === 0) continue;
    const [wx, wy] = [(to[0] - from[0]) / run, (to[1] - from[1]) / run];
    if (Math.abs(u[0] * wy - u[1] * wx) < ALONG) continue;
    const [px, py] = [corner[0] - from[0], corner[1] - from[1]];
    const off = Math.abs(Math.abs(px * wy - py * wx) - thickness / 2);
    const far = px * wx + py * wy;
    const past = Math.max(0, -far, far - run);
    if (off > AT_CORNER || past > widest) continue;
    if (past < least) {
      least = past;
      best = piece;
    }
  }
  return best;
}
