import type { XY } from '../../../geometry/plan/model.ts';
import { pannedBy, type Viewport, zoomedAt } from '../../state/viewport.ts';

/** One notch of the wheel (100 px in most browsers) zooms by a quarter. */
const WHEEL_ZOOM = Math.log(1.25) / 100;
/** Factor for a pinch on a touchpad, whose steps are about a tenth of a wheel's. */
const PINCH_ON_PAD = 6;
/** Height of a line, px, for browsers that count lines instead of px. */
const LINE_PX = 30;

/** The fields of a wheel event that are read. `wheelDeltaY` is the older measure, 120 per notch in every browser that has it. */
export type Wheel = Pick<WheelEvent, 'deltaX' | 'deltaY' | 'deltaMode' | 'ctrlKey' | 'shiftKey'> & {
  readonly wheelDeltaY?: number;
};

/** Returns the viewport after a wheel event with the pointer at `screen`: zoomed about the pointer, or panned. */
export function wheeled(viewport: Viewport, wheel: Wheel, screen: XY): Viewport {
  const unit = wheel.deltaMode === 1 ? LINE_PX : 1;
  if (!zooms(wheel)) return pannedBy(viewport, -wheel.deltaX * unit, -wheel.deltaY * unit);
  return zoomedAt(viewport, screen, Math.exp(-wheel.deltaY * unit * WHEEL_ZOOM * (wheel.ctrlKey ? PINCH_ON_PAD : 1)));
}

/**
 * Whether a wheel event zooms. A mouse wheel, which scrolls vertically in whole notches, and a pinch on a touchpad, which is sent with
 * Ctrl, zoom; two fingers on a touchpad pan.
 */
function zooms({ ctrlKey, shiftKey, deltaMode, deltaX, wheelDeltaY }: Wheel): boolean {
  if (ctrlKey || deltaMode === 1) return true;
  return deltaX === 0 && !shiftKey && (wheelDeltaY === undefined || wheelDeltaY % 120 === 0);
}

/**
 * Returns the viewport after one of two fingers has moved: panned and zoomed so that both points of the plan stay under the fingers.
 * @param other place of the finger that did not move
 */
export function pinched(viewport: Viewport, before: XY, now: XY, other: XY): Viewport {
  const middle = (a: XY): XY => [(a[0] + other[0]) / 2, (a[1] + other[1]) / 2];
  const spread = (a: XY) => Math.hypot(a[0] - other[0], a[1] - other[1]);
  const panned = pannedBy(viewport, middle(now)[0] - middle(before)[0], middle(now)[1] - middle(before)[1]);
  return zoomedAt(panned, middle(now), spread(now) / Math.max(1, spread(before)));
}
