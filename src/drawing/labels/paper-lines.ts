import type { XY } from '../../../geometry/plan/model.ts';
import { along, distance, nearestOnSegment } from '../../../geometry/plane/point.ts';
import { inked, polar } from '../display-list.ts';
import { blockOf, type Label, type LabelSheet, writeBlock } from './label.ts';
import type { LabeledLines } from './layout.ts';
import { tape } from './measured.ts';
import { lineSlot, type Slot, slotAt, slotPart, turnAlong } from './slot.ts';
import { type TapedGap, takeTapes, tapedLabels } from './taped.ts';

/** A line along which a distance is measured, plan mm. */
export interface MeasuredLine {
  readonly from: XY;
  readonly to: XY;
  readonly words: string;
}

/** Positions of a length on its line in the order tried, as shares of the line. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;
/** Offsets of a level text from the line: sideways as a share of its width, up or down as a multiple of its type size. */
const LEVEL = [0.15, 0.6, 1.2].flatMap((gap) =>
  [0, 0.25, 0.5, 0.75].flatMap((shift) => [-gap, gap].map((off) => [shift, off] as const)),
);

/**
 * Returns the line with a bar across each end and, where there is room, its length along it or level beside it.
 * @param all lines of the drawing: a length must be nearer to its own line than to any other
 */
function measuredLabel(line: MeasuredLine, all: readonly MeasuredLine[], sheet: LabelSheet): Label {
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
  // In this order: along the line, level beside it, on a plate that hides an outline.
  const free = slots.find((one) => one.turn === turn && fits(one)) ?? slots.find(fits);
  const slot = free ?? slots.find(onPlate);
  const drawn = tape(from, to, style.size, style.color);
  if (!slot) return { texts: [], shapes: [drawn], slots: [] };
  const plate = inked({ fill: 'paper' }, slotPart(slot));
  return writeBlock(block, slot, sheet, free ? [drawn] : [plate, drawn]);
}

/** Distance from the middle of a slot to a line. */
function gapTo({ x, y }: Slot, { from, to }: MeasuredLine): number {
  return distance([x, y], nearestOnSegment([x, y], from, to));
}

/** Returns the lines of a printed plan: measured lines to subjects near a limit, and tapes to the walls. */
export function paperLines(measured: readonly MeasuredLine[], taped: readonly TapedGap[]): LabeledLines {
  return {
    take: (sheet) => {
      for (const { from, to } of measured) sheet.placer.take(lineSlot(from, to, 0.2 * sheet.type.fine), 'line');
      takeTapes(taped, sheet);
    },
    write: (sheet) => ({
      measured: measured.map((line) => measuredLabel(line, measured, sheet)),
      taped: tapedLabels(taped, sheet),
    }),
  };
}
