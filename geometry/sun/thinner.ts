import { CROSSING_SINE, SNAP_DISTANCE } from '../level/tolerances.ts';
import type { LevelModel, OpeningBody } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';

/** A part of the width of an opening, with the thickness of the wall there. */
interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
  readonly thickness: Mm;
}

/** A wall that ends within this distance of an opening is its jamb, mm. */
const BESIDE: Mm = 1;
/** A shorter stretch, or a smaller difference of thickness, is rounding, mm. */
const SHORTEST: Mm = 0.01;
/**
 * Returns the parts of the width of an opening, measured from the first corner of its body, where the wall is thinner than the body: a thicker
 * wall runs along the other parts only.
 */
export function thinnerParts({ body }: OpeningBody, pieces: LevelModel['pieces']): readonly Stretch[] {
  const [a, b, , d] = body as readonly [XY, XY, XY, XY];
  const [width, deepest] = [distance(a, b), distance(a, d)];
  const [ux, uy] = [(b[0] - a[0]) / width, (b[1] - a[1]) / width];
  const here = pieces.flatMap(({ from, to, thickness }) => {
    const [s, t] = [from, to].map(([x, y]) => (x - a[0]) * ux + (y - a[1]) * uy) as [Mm, Mm];
    const stretch = { from: Math.min(s, t), to: Math.max(s, t), thickness };
    if (stretch.to < -BESIDE || stretch.from > width + BESIDE) return [];
    const [v, w] = [from, to].map(([x, y]) => (y - a[1]) * ux - (x - a[0]) * uy - deepest / 2) as [Mm, Mm];
    const isAlong = Math.abs(v - w) < CROSSING_SINE * (stretch.to - stretch.from);
    return isAlong && (v > 0 !== w > 0 || Math.min(Math.abs(v), Math.abs(w)) <= SNAP_DISTANCE) ? [stretch] : [];
  });
  const ends = here.flatMap(({ from, to }) => [from, to]).filter((s) => s > -BESIDE && s < width + BESIDE);
  const stops = [-BESIDE, ...ends, width + BESIDE].sort((s, t) => s - t);
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i] as Mm;
    const there = here.filter((stretch) => stretch.from <= from && stretch.to >= to);
    const thickness = Math.max(...there.map((stretch) => stretch.thickness));
    if (there.length === 0 || to - from < SHORTEST || thickness > deepest - SHORTEST) return [];
    return [{ from: Math.min(width, Math.max(0, from)), to: Math.min(width, Math.max(0, to)), thickness }];
  });
}
