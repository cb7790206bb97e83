import type { Deg, Mm, XY } from '../plan/model.ts';
import { distance, nearestOnSegment } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';

/**
 * The turn at which a box lies along the face nearest to `at`, degrees in 0…180; 0 where none is within `reach` mm.
 * @param deep the box is deeper than wide: its depth, not its width, is its longer side
 */
export function turnAlongFace(faces: readonly Line[], at: XY, reach: Mm, deep: boolean): Deg {
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
  const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI + (deep ? 90 : 0);
  const half = ((turn % 180) + 180) % 180;
  // A level wall must give exactly 0, whichever way round its room is walked.
  return Math.abs(half - 180) < 1e-9 ? 0 : half;
}
