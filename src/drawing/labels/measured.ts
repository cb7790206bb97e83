import type { XY } from '../../../geometry/plan/model.ts';
import { along, distance, nearestOnSegment } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { inked, linesPart, polar, type Shape } from '../display-list.ts';
import type { ColorRole } from '../inks.ts';
import { blockOf, type Label, type LabelSheet, writeBlock } from './label.ts';
import { edgeToward, lineSlot, type Slot, slotAt, slotPart, turnAlong } from './slot.ts';

/** A line that somebody with a tape would draw, plan mm. */
export interface MeasuredLine {
  readonly from: XY;
  readonly to: XY;
  readonly words: string;
}

/** Shares of the line and sides of it on which its length may stand. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;
/** Level beside the line: moved along by a share of the text, and off the line by so much of its size. */
const LEVEL = [0.15, 0.6, 1.2].flatMap((gap) =>
  [0, 0.25, 0.5, 0.75].flatMap((shift) => [-gap, gap].map((off) => [shift, off] as const)),
);

/**
 * The line with a bar across each end, and its length along it or level beside it, where there is room.
 * @param all of the drawing: the length is nearest to its own
 */
export function measuredLabel(line: MeasuredLine, all: readonly MeasuredLine[], sheet: LabelSheet): Label {
  const { from, to, words } = line;
  const { placer, type, measure } = sheet;
  const style = { size: type.fine, bold: true, color: 'dimension', halo: 'paper' } as const;
  const block = blockOf([{ text: words, style }], measure);
  const turn = turnAlong(from, to);
  const upright = (lineSlot(from, to, 0).turn * Math.PI) / 180 + Math.PI / 2;
  const off = block.height / 2 + 0.15 * style.size;
  const slots = SHARES.flatMap((share) =>
    [-1, 1].flatMap((side): readonly Slot[] => {
      const [x, y] = along(from, to, share);
      return [
        slotAt(block, polar([x, y], off * side, upright), turn),
        slotAt(block, [x + side * (block.width / 2 + 0.3 * style.size), y]),
        ...LEVEL.map(([shift, gap]) =>
          slotAt(block, [x + side * shift * block.width, y + Math.sign(gap) * off + gap * style.size]),
        ),
      ];
    }),
  );
  const isOwn = (slot: Slot) => all.every((other) => other === line || gapTo(slot, other) > gapTo(slot, line));
  const fits = (slot: Slot) => placer.isFree(slot, ['thing']) && isOwn(slot);
  const onPlate = (slot: Slot) => placer.isFree(slot, ['thing', 'outline']) && isOwn(slot);
  // Along the line where it is long enough, else level beside it, at last on a plate that hides an outline.
  const free = slots.find((one) => one.turn === turn && fits(one)) ?? slots.find(fits);
  const slot = free ?? slots.find(onPlate);
  const drawn = tape(from, to, style.size, style.color);
  if (!slot) return { texts: [], shapes: [drawn], slots: [] };
  const plate = inked({ fill: 'paper' }, slotPart(slot));
  return writeBlock(block, slot, sheet, free ? [drawn] : [plate, drawn]);
}

/** From the middle of a slot to a line. */
function gapTo({ x, y }: Slot, { from, to }: MeasuredLine): number {
  return distance([x, y], nearestOnSegment([x, y], from, to));
}

/**
 * Where an upright figure may stand, the best first: on its line where that is long enough, beside it, past its end, farther beside it.
 * It never covers an end of its line. Screen px.
 */
export function figureSlots([a, b]: Line, width: number, height: number): readonly Slot[] {
  const long = distance(a, b);
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const [ux, uy] = polar([0, 0], 1, angle);
  // How much of the line the figure hides, and how far it reaches across it.
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

/** From here on, px, a figure stands so far off its line that it has a leader to it. */
const OFF_LINE_PX = 10;

/** A leader from a figure to the nearest point of the line that it is the length of; nothing where it stands on the line or close to it. */
export function figureLeader([a, b]: Line, slot: Slot, color: ColorRole): readonly Shape[] {
  const end = nearestOnSegment([slot.x, slot.y], a, b);
  const start = edgeToward(slot, end);
  if (distance(start, end) < OFF_LINE_PX) return [];
  return [inked({ line: 'leader', color }, linesPart([[start, end]]))];
}

/** Past the symbol of a detector at the end of a line, px. */
const SYMBOL_PX = 34;

/** So near an end, px, a figure would hide the bar across it. */
const END_PX = 3;

const covers = ({ x, y, width, height }: Slot, [px, py]: XY): boolean =>
  Math.abs(px - x) < width / 2 + END_PX && Math.abs(py - y) < height / 2 + END_PX;

/** A line with a bar across each end; of no length, a point. */
export function tape(from: XY, to: XY, size: number, color: ColorRole): Shape {
  const reach = distance(from, to) > 0 ? size * 0.4 : 0;
  return inked({ line: 'measured', color }, linesPart([[from, to], ...endMarks(from, to, reach, Math.PI / 2)]));
}

/** A short stroke across each end of a line. @param slant to the line, radians */
export function endMarks(from: XY, to: XY, reach: number, slant: number): readonly Line[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]) + slant;
  return [from, to].map((end) => [polar(end, -reach, angle), polar(end, reach, angle)]);
}
