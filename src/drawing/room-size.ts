import type { Room } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { ringExtent } from '../../geometry/plane/body.ts';
import { signedArea } from '../../geometry/plane/ring.ts';
import { formatMeasured, type LengthUnit } from '../../geometry/units/index.ts';

/** "20 ft 9 3/4 in × 24 ft": sides of a four-cornered room; of any other, how far it reaches, with "at most". */
export function roomSizeWords({ floorRings }: Room, unit: LengthUnit): string {
  const ring = floorRings[0] ?? [];
  const [cos, sin] = longestEdge(ring);
  const turned = floorRings.flat().map(([x, y]): XY => [x * cos + y * sin, y * cos - x * sin]);
  const { minX, minY, maxX, maxY } = ringExtent(turned);
  const words = [maxX - minX, maxY - minY].map((size) => formatMeasured(size, unit)).join(' × ');
  const box = (maxX - minX) * (maxY - minY);
  const full = floorRings.length === 1 && Math.abs(Math.abs(signedArea(ring)) - box) <= 1e-6 * box;
  return full ? words : `${words} at most`;
}

/** Direction of the longest edge, within half a quarter turn of the page's x. */
function longestEdge(ring: readonly XY[]): readonly [cos: number, sin: number] {
  let best = { length: 0, dx: 1, dy: 0 };
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as XY;
    const length = Math.hypot(nx - x, ny - y);
    // Of edges of almost the same length the first counts: else rounding would turn the words.
    if (length > best.length + 1) best = { length, dx: nx - x, dy: ny - y };
  });
  const angle = Math.atan2(best.dy, best.dx);
  const near = angle - Math.round(angle / (Math.PI / 2)) * (Math.PI / 2);
  return [Math.cos(near), Math.sin(near)];
}
