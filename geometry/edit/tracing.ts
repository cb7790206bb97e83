import type { Deg, Level, Mm, Plan, Tracing, XY } from '../plan/model.ts';
import { direction, fullTurn } from '../plane/bearing.ts';
import type { Extent } from '../plane/extent.ts';
import { distance, roundPoint } from '../plane/point.ts';
import type { EditResult } from './checked.ts';
import { checkedLevelEdit } from './level.ts';

/** Sets or (with null) removes the picture under a level. Throws if the plan does not have the level. */
export function withTracing(plan: Plan, levelId: string, tracing: Tracing | null): EditResult {
  return checkedLevelEdit(
    plan,
    levelId,
    ({ tracing: _, ...level }): Level => (tracing ? { ...level, tracing } : level),
  );
}

/** Initial width of a picture on an empty level, mm: 40 ft, the width of a house. */
const FIRST_WIDTH: Mm = 12_192;

/**
 * Returns the position of a new picture over the drawing, or at the width of a house around a point; its proportions
 * are kept. `width` and `height` in pixels.
 */
export function newTracingPlace(
  extent: Extent | null,
  middle: XY,
  width: number,
  height: number,
): Pick<Tracing, 'at' | 'scale'> {
  if (!extent) return { at: middle, scale: FIRST_WIDTH / width };
  const scale = Math.max((extent.maxX - extent.minX) / width, (extent.maxY - extent.minY) / height);
  const at: XY = [(extent.minX + extent.maxX) / 2, (extent.minY + extent.maxY) / 2];
  return { at, scale: scale > 0 ? scale : FIRST_WIDTH / width };
}

/**
 * Returns the picture scaled about `a` so that the distance from `a` to `b` on the plan becomes `length`, mm, above
 * zero. The same picture if the two points coincide.
 */
export function tracingScaled(tracing: Tracing, a: XY, b: XY, length: Mm): Tracing {
  const factor = length / distance(a, b);
  if (!Number.isFinite(factor) || factor <= 0) return tracing;
  const [x, y] = tracing.at;
  const at: XY = [a[0] + (x - a[0]) * factor, a[1] + (y - a[1]) * factor];
  return { ...tracing, at: roundPoint(at), scale: tracing.scale * factor };
}

/**
 * Returns the picture rotated about `a` by the smallest angle that makes the line from `a` to `b` horizontal or
 * vertical. The same picture if the two points coincide.
 */
export function tracingStraightened(tracing: Tracing, a: XY, b: XY): Tracing {
  if (distance(a, b) === 0) return tracing;
  const slope = direction(a, b);
  return tracingRotated(tracing, Math.round(slope / 90) * 90 - slope, a);
}

/** Returns the picture rotated clockwise on screen about a point. */
export function tracingRotated(tracing: Tracing, by: Deg, about: XY): Tracing {
  const angle = (by * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [tracing.at[0] - about[0], tracing.at[1] - about[1]];
  const at: XY = [about[0] + dx * cos - dy * sin, about[1] + dx * sin + dy * cos];
  return { ...tracing, at: roundPoint(at), turn: roundedHalfTurn(tracing.turn + by) };
}

/** Returns an angle as −180 (excluded) to 180 degrees, rounded to 0.001 degree. */
function roundedHalfTurn(turn: Deg): Deg {
  const round = Math.round(fullTurn(turn) * 1000) / 1000;
  return round > 180 ? round - 360 : round;
}
