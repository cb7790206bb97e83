import type { Deg, Mm, XY } from '../plan/model.ts';
import { direction } from '../plane/bearing.ts';
import { distance, nearestOnSegment } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';

/**
 * Returns the angle at which a box is parallel to the face nearest to `at`, degrees in 0…180; 0 if no face is within
 * `reach` mm.
 *
 * @param deep the box is deeper than wide, so its depth is the longer side
 */
export function angleAlongFace(faces: readonly Line[], at: XY, reach: Mm, deep: boolean): Deg {
  let best: Line | null = null;
  let least = reach;
  for (const face of faces) {
    const far = distance(at, nearestOnSegment(at, face[0], face[1]));
    if (far <= least) {
      least = far;
      best = face;
    }
  }
  if (!best) return 0;
  const [a, b] = best;
  const turn = direction(a, b) + (deep ? 90 : 0);
  const half = ((turn % 180) + 180) % 180;
  // Exactly 0 for a horizontal wall, whichever way the ring of its room runs.
  return Math.abs(half - 180) < 1e-9 ? 0 : half;
}
