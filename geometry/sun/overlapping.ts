import type { OpeningBody } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';

/** Bodies that overlap by less than this only share a side, mm. */
const SHARED: Mm = 0.1;
/** Sine of the angle between two walls below which they run along each other. */
const ALONG = 1e-6;

/**
 * Returns the openings whose bodies overlap that of an opening, in walls that meet or cross its own wall: light passes from one into the other
 * without a floor between them.
 */
export function overlappingOpenings(openings: readonly OpeningBody[], index: number): readonly number[] {
  const one = openings[index]?.body;
  if (!one) return [];
  return openings.flatMap(({ body }, other) => (other !== index && overlap(one, body) ? [other] : []));
}

function overlap(one: readonly XY[], other: readonly XY[]): boolean {
  const [u, v] = axesOf(one);
  const [s, t] = axesOf(other);
  if (Math.abs(u[0] * s[1] - u[1] * s[0]) < ALONG) return false;
  // Two rectangles are apart if their projections on a side of one of them are apart.
  return [u, v, s, t].every((axis) => {
    const [a, b] = [spanOf(one, axis), spanOf(other, axis)];
    return Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > SHARED;
  });
}

/** Returns the directions along and across the wall of an opening. */
function axesOf(body: readonly XY[]): readonly [XY, XY] {
  const [a, b] = body as readonly [XY, XY, XY, XY];
  const long = distance(a, b) || 1;
  const along: XY = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  return [along, [-along[1], along[0]]];
}

function spanOf(body: readonly XY[], [x, y]: XY): readonly [Mm, Mm] {
  const at = body.map((p) => p[0] * x + p[1] * y);
  return [Math.min(...at), Math.max(...at)];
}
