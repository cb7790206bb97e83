import { vectorLength } from './point.ts';
import type { Ring, XY } from './types.ts';

/**
 * Returns the weight of each corner of a ring at a point inside it; the weights sum to 1 and reproduce the point.
 * When the corners move, the weighted sum of the moved corners is the moved point. A point on a corner has weight 1
 * there; a point on an edge depends on its two ends. Mean value coordinates (Floater, 2003; formula from memory). The
 * ring has at least three corners.
 */
export function meanValueCoordinates(ring: Ring, [x, y]: XY): readonly number[] {
  const spokes = ring.map(([cx, cy]) => ({ dx: cx - x, dy: cy - y, far: vectorLength(cx - x, cy - y) }));
  const at = spokes.findIndex(({ far }) => far < 1e-6);
  if (at >= 0) return ring.map((_, i) => (i === at ? 1 : 0));
  const halves = spokes.map((a, i) => {
    const b = spokes[(i + 1) % spokes.length] as (typeof spokes)[number];
    const cross = a.dx * b.dy - a.dy * b.dx;
    const dot = a.dx * b.dx + a.dy * b.dy;
    return { tangent: (a.far * b.far - dot) / cross, flat: Math.abs(cross) < 1e-9 * a.far * b.far, dot };
  });
  const side = halves.findIndex(({ flat, dot }) => flat && dot < 0);
  if (side >= 0) {
    const next = (side + 1) % ring.length;
    const [a, b] = [(spokes[side] as { far: number }).far, (spokes[next] as { far: number }).far];
    const shares = new Map([
      [side, b / (a + b)],
      [next, a / (a + b)],
    ]);
    return ring.map((_, i) => shares.get(i) ?? 0);
  }
  const weights = spokes.map(({ far }, i) => {
    const before = halves[(i + halves.length - 1) % halves.length] as (typeof halves)[number];
    const after = halves[i] as (typeof halves)[number];
    return ((before.flat ? 0 : before.tangent) + (after.flat ? 0 : after.tangent)) / far;
  });
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}
