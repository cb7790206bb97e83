import type { Deg, Mm, Tracing, XY } from '../plan/model.ts';
import type { Extent } from '../plane/body.ts';
import { distance, roundPoint } from '../plane/point.ts';

/** Where a photo or scan lies under the drawing, and how it is brought to scale and straight. */

/** How wide a picture is laid down where nothing is drawn yet, mm: 40 ft, the breadth of a house. */
const FIRST_WIDTH: Mm = 12_192;

/** A fresh picture over what is drawn, or of a house's breadth about a point; its own proportions are kept. `width` and `height` in pixels. */
export function laidOver(
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
 * The picture made larger or smaller about `a`, so that from `a` to `b` on the plan it then measures `length`, mm above zero. The
 * same picture where the two points are one: nothing can be said of its scale.
 */
export function scaledTo(tracing: Tracing, a: XY, b: XY, length: Mm): Tracing {
  const factor = length / distance(a, b);
  if (!Number.isFinite(factor) || factor <= 0) return tracing;
  const [x, y] = tracing.at;
  const at: XY = [a[0] + (x - a[0]) * factor, a[1] + (y - a[1]) * factor];
  return { ...tracing, at: roundPoint(at), scale: tracing.scale * factor };
}

/**
 * The picture turned about `a` by the least angle that brings the line from `a` to `b` level or plumb: a wall of the photo lies
 * along the page then. The same picture where the two points are one.
 */
export function straightened(tracing: Tracing, a: XY, b: XY): Tracing {
  if (distance(a, b) === 0) return tracing;
  const slope = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  return turnedBy(tracing, Math.round(slope / 90) * 90 - slope, a);
}

/** Turned clockwise on screen about a point that stays. */
export function turnedBy(tracing: Tracing, by: Deg, about: XY): Tracing {
  const angle = (by * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [tracing.at[0] - about[0], tracing.at[1] - about[1]];
  const at: XY = [about[0] + dx * cos - dy * sin, about[1] + dx * sin + dy * cos];
  return { ...tracing, at: roundPoint(at), turn: tidyTurn(tracing.turn + by) };
}

/** From -180, exclusive, to 180, to a thousandth of a degree. */
function tidyTurn(turn: Deg): Deg {
  const round = Math.round((((turn % 360) + 360) % 360) * 1000) / 1000;
  return round > 180 ? round - 360 : round;
}

/** The rectangle that holds the picture, mm. */
export function tracingExtent({ at: [x, y], width, height, scale, turn }: Tracing): Extent {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  const [halfX, halfY] = [((width * cos + height * sin) * scale) / 2, ((width * sin + height * cos) * scale) / 2];
  return { minX: x - halfX, minY: y - halfY, maxX: x + halfX, maxY: y + halfY };
}
