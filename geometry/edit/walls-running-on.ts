import type { Level, Mm, Wall, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';

/** Two walls are collinear if neither deviates from the common line by more than this, mm. */
const STRAIGHT: Mm = 0.5;

/** Returns the walls that continue this one at its `from` and at its `to` end, with which it can be joined. */
export function wallsRunningOn(
  level: Level,
  wall: Wall,
): readonly { readonly end: 'from' | 'to'; readonly other: Wall }[] {
  return level.walls.flatMap((other) => {
    const joint = other.id === wall.id ? null : jointOf(wall, other);
    return joint ? [{ end: joint.ends[0], other }] : [];
  });
}

/** Returns the ends at which two walls meet and continue each other; null if they do not. */
export function jointOf(wall: Wall, other: Wall): { readonly ends: readonly ['from' | 'to', 'from' | 'to'] } | null {
  for (const own of ['from', 'to'] as const) {
    for (const met of ['from', 'to'] as const) {
      if (distance(wall[own], other[met]) > JOINED) continue;
      const [a, b] = [wall[own === 'from' ? 'to' : 'from'], other[met === 'from' ? 'to' : 'from']];
      const whole = distance(a, b);
      // Walls folded back over each other are collinear too, but shorter together than one of them.
      if (whole < Math.max(distance(a, wall[own]), distance(b, other[met]))) continue;
      if (whole > 0 && offLine(wall[own], a, b) <= STRAIGHT) return { ends: [own, met] };
    }
  }
  return null;
}

function offLine(p: XY, a: XY, b: XY): Mm {
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / (distance(a, b) || 1);
}
