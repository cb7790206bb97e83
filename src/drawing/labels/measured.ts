import type { XY } from '../../../geometry/plan/model.ts';
import { distance, nearestOnSegment } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { inked, linesPart, polar, type Shape } from '../display-list.ts';
import type { ColorRole } from '../inks.ts';
import { edgeToward, pairs, type Slot, slotAt } from './slot.ts';

/**
 * Yields slots for an upright figure, the best first: on its line, beside it, past its ends, farther off beside it. None covers an end of
 * the line. Screen px.
 */
export function* figureSlots([a, b]: Line, width: number, height: number): Generator<Slot> {
  const long = distance(a, b);
  const [ux, uy] = long > 0 ? [(b[0] - a[0]) / long, (b[1] - a[1]) / long] : [1, 0];
  // Length of the line that the figure hides, and the size of the figure across the line.
  const hidden = Math.min(width / Math.max(Math.abs(ux), 1e-9), height / Math.max(Math.abs(uy), 1e-9));
  const across = Math.abs(uy) * width + Math.abs(ux) * height;
  // Distances along the line and off it.
  const places: readonly XY[] = [
    ...[0.5, 0.68, 0.32, 0.85].map((share): XY => [share * long, 0]),
    ...pairs([long / 2], [-across / 2 - 5, across / 2 + 5]),
    ...[8, SYMBOL_PX].map((off): XY => [long + hidden / 2 + off, 0]),
    ...[8, SYMBOL_PX].map((off): XY => [-hidden / 2 - off, 0]),
    ...pairs([long / 2 - 0.7 * hidden, long / 2 + 0.7 * hidden], [-across / 2 - 5, across / 2 + 5]),
    ...[1.5, 2.5].flatMap((times) => pairs([long / 2], [-across * times - 5, across * times + 5])),
  ];
  for (const [way, off] of places) {
    const slot = slotAt({ width, height }, [a[0] + way * ux - off * uy, a[1] + way * uy + off * ux]);
    if (!covers(slot, a) && !covers(slot, b)) yield slot;
  }
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
