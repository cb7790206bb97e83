import type { XY } from '../../../geometry/plan/model.ts';
import { distance, nearestOnSegment } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { inked, linesPart, polar, type Shape } from '../display-list.ts';
import type { ColorRole } from '../inks.ts';
import { edgeToward, type Slot, slotAt } from './slot.ts';

/**
 * Returns slots for an upright figure, the best first: on its line, beside it, past its ends, farther off beside it. None covers an end of
 * the line. Screen px.
 */
export function figureSlots([a, b]: Line, width: number, height: number): readonly Slot[] {
  const long = distance(a, b);
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const [ux, uy] = polar([0, 0], 1, angle);
  // Length of the line that the figure hides, and the size of the figure across the line.
  const hidden = Math.min(width / Math.max(Math.abs(ux), 1e-9), height / Math.max(Math.abs(uy), 1e-9));
  const across = Math.abs(uy) * width + Math.abs(ux) * height;
  const at = (way: number, off: number) =>
    slotAt({ width, height }, polar(polar(a, way, angle), off, angle + Math.PI / 2));
  const on = [0.5, 0.68, 0.32, 0.85].map((share) => at(share * long, 0));
  const beside = [-1, 1].map((side) => at(long / 2, side * (across / 2 + 5)));
  const past = [8, SYMBOL_PX].map((off) => at(long + hidden / 2 + off, 0));
  const before = [8, SYMBOL_PX].map((off) => at(-hidden / 2 - off, 0));
  const farther = [1.5, 2.5].flatMap((times) => [-1, 1].map((side) => at(long / 2, side * (across * times + 5))));
  const askew = [-0.7, 0.7].flatMap((way) =>
    [-1, 1].map((side) => at(long / 2 + way * hidden, side * (across / 2 + 5))),
  );
  const slots = [...on, ...beside, ...past, ...before, ...askew, ...farther];
  return slots.filter((slot) => !covers(slot, a) && !covers(slot, b));
}

/** A figure at least this far from its line gets a leader to it, px. */
const OFF_LINE_PX = 10;

/** Returns a leader from a figure to the nearest point of its line; empty if the figure is on the line or close to it. */
export function figureLeader([a, b]: Line, slot: Slot, color: ColorRole): readonly Shape[] {
  const end = nearestOnSegment([slot.x, slot.y], a, b);
  const start = edgeToward(slot, end);
  if (distance(start, end) < OFF_LINE_PX) return [];
  return [inked({ line: 'leader', color }, linesPart([[start, end]]))];
}

/** Offset past the symbol of a detector at the end of a line, px. */
const SYMBOL_PX = 34;

/** A figure closer than this to an end would hide the bar across it, px. */
const END_PX = 3;

const covers = ({ x, y, width, height }: Slot, [px, py]: XY): boolean =>
  Math.abs(px - x) < width / 2 + END_PX && Math.abs(py - y) < height / 2 + END_PX;

/** Returns a line with a bar across each end; without bars if its length is 0. */
export function tape(from: XY, to: XY, size: number, color: ColorRole): Shape {
  const reach = distance(from, to) > 0 ? size * 0.4 : 0;
  return inked({ line: 'measured', color }, linesPart([[from, to], ...endMarks(from, to, reach, Math.PI / 2)]));
}

/** Returns a short stroke across each end of a line. @param reach half the length of a stroke @param slant angle to the line, radians */
export function endMarks(from: XY, to: XY, reach: number, slant: number): readonly Line[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]) + slant;
  return [from, to].map((end) => [polar(end, -reach, angle), polar(end, reach, angle)]);
}
