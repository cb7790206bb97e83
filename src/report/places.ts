/** Where a text may stand on a floor or within an outline. All coordinates are mm of paper. */

import type { XY } from '../../geometry/plan/model.ts';
import { ringExtent } from '../../geometry/plane/body.ts';
import { ringsContain } from '../../geometry/plane/ring.ts';
import { type Slot, slotCorners } from './placer.ts';

/** Rings with a point inside by the even-odd count. */
export type PaperRings = readonly (readonly XY[])[];

/** What was drawn, and what found no place. */
export interface Names {
  readonly drawn: string;
  readonly leftOff: readonly string[];
}

/** Steps of the grid on which a name looks for its place, mm. */
const GRID = 2;
/** Points on the edge of a slot are looked at so far apart, mm. */
const EDGE_STEP = 2;

/** Points within rings, nearest to `middle` first: it comes first. Nearness counts more upward, for lines of text lie flat. */
export function gridPlaces(rings: PaperRings, middle: XY): readonly XY[] {
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const places: XY[] = [middle];
  for (let x = minX + GRID; x < maxX; x += GRID) for (let y = minY + GRID; y < maxY; y += GRID) places.push([x, y]);
  const far = ([x, y]: XY) => Math.hypot(x - middle[0], (y - middle[1]) * 1.4);
  return places.sort((a, b) => far(a) - far(b));
}

/** Whether the edge of a slot stays within rings: its corners and points between them. */
export function insideRings(rings: PaperRings, slot: Slot): boolean {
  const corners = slotCorners(slot);
  return corners.every(([x, y], i) => {
    const [nx, ny] = corners[(i + 1) % 4] ?? [x, y];
    const steps = Math.max(1, Math.ceil(Math.hypot(nx - x, ny - y) / EDGE_STEP));
    return Array.from({ length: steps }, (_, k) => k / steps).every((t) =>
      ringsContain(rings, [x + (nx - x) * t, y + (ny - y) * t]),
    );
  });
}

/** Where the way from a slot's middle to a point leaves the slot; the point itself when it lies within. */
export function edgeToward({ x, y, width, height, turn }: Slot, px: number, py: number): XY {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const dx = (px - x) * cos + (py - y) * sin;
  const dy = (py - y) * cos - (px - x) * sin;
  const share = Math.min(width / 2 / Math.max(Math.abs(dx), 1e-9), height / 2 / Math.max(Math.abs(dy), 1e-9));
  return [x + (px - x) * Math.min(1, share), y + (py - y) * Math.min(1, share)];
}
