import type { Mm, XY } from '../plan/model.ts';
import { ringExtent } from '../plane/extent.ts';
import { ringsContain } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { edgeLength, onEdge, type Stretch } from './visible-edges.ts';

/** Sampling steps: at most this length, and at most 2 degrees on arcs, whose chords deviate 0.3 mm at a radius of 84 in. */
const STEP: Mm = 60;
const ARC_STEP = (2 * Math.PI) / 180;

/**
 * Returns the longest polyline along the visible outline of a zone that is on one of the floors, as a base line for
 * the rule's name; null for none. For drawing only: ends are accurate to one step, 60 mm.
 */
export function labelLine(visible: readonly Stretch[], floors: readonly (readonly Ring[])[]): readonly XY[] | null {
  const spaces = floors.map((rings) => ({ rings, extent: ringExtent(rings.flat()) }));
  const onFloor = (p: XY) =>
    spaces.some(
      ({ rings, extent: { minX, minY, maxX, maxY } }) =>
        p[0] >= minX && p[0] <= maxX && p[1] >= minY && p[1] <= maxY && ringsContain(rings, p),
    );
  let best: readonly XY[] | null = null;
  let most = 0;
  for (const run of visible.flatMap((stretch) => runsInside(pointsAlong(stretch), onFloor))) {
    const length = polylineLength(run);
    if (length <= most) continue;
    most = length;
    best = run;
  }
  return best;
}

/** Returns the length of a polyline, in the unit of its points. */
export function polylineLength(points: readonly XY[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as XY, points[i] as XY];
    sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

function pointsAlong(stretch: Stretch): readonly XY[] {
  const points: XY[] = [];
  for (const edge of stretch) {
    const turns = edge.kind === 'arc' ? Math.abs(edge.sweep) / ARC_STEP : 0;
    const steps = Math.max(1, Math.ceil(Math.max(turns, edgeLength(edge) / STEP)));
    for (let i = points.length === 0 ? 0 : 1; i <= steps; i++) points.push(onEdge(edge, i / steps));
  }
  return points;
}

function runsInside(points: readonly XY[], isInside: (p: XY) => boolean): readonly (readonly XY[])[] {
  const runs: XY[][] = [];
  let before = false;
  for (const point of points) {
    const now = isInside(point);
    if (now && before) runs.at(-1)?.push(point);
    else if (now) runs.push([point]);
    before = now;
  }
  return runs;
}
