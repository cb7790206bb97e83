import type { XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';

/** A line closer than this to the start of a step is ignored, because the step leaves it, mm. */
const LEAVES = 0.5;

/** Returns the end of a step from a point: on the first line that it crosses or reaches, else its full length away. */
export function stepToLine(from: XY, by: XY, lines: readonly Line[]): XY {
  const length = Math.hypot(...by);
  const shares = lines
    .map((line) => crossing(from, by, line))
    .filter((share): share is number => share !== null && share * length > LEAVES && share <= 1);
  const share = Math.min(1, ...shares);
  return [from[0] + by[0] * share, from[1] + by[1] * share];
}

/** Returns the fraction of the step after which it crosses the line; null where it does not, or is parallel to it. */
function crossing([x, y]: XY, [dx, dy]: XY, [a, b]: Line): number | null {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const across = dx * ey - dy * ex;
  if (Math.abs(across) < 1e-9 * distance(a, b)) return null;
  const share = ((a[0] - x) * ey - (a[1] - y) * ex) / across;
  const onLine = ((a[0] - x) * dy - (a[1] - y) * dx) / across;
  return onLine >= 0 && onLine <= 1 ? share : null;
}
