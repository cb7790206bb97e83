import type { XY } from '../../../geometry/plan/model.ts';
import { nearestOnRing } from '../../../geometry/plane/ring.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { linesPart, type Shape } from '../display-list.ts';
import type { ColorRole } from '../inks.ts';
import { blockOf, blockSlot, blockTexts, slotPart, turnAlong } from './block.ts';
import type { Label, LabelMedium } from './medium.ts';
import { lineSlot, type Placer, type Slot } from './placer.ts';

/** A line that somebody with a tape would draw, in units of the medium. */
export interface MeasuredLine {
  readonly from: XY;
  readonly to: XY;
  readonly words: string;
}

/** Shares of the line and sides of it on which its length may stand. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;
/** Level beside the line: moved along by a share of the text, and off the line by so much of its size. */
const LEVEL = [0.15, 0.6, 1.2].flatMap((gap) =>
  [0, 0.25, 0.5, 0.75].flatMap((shift) => [[shift, -gap] as const, [shift, gap] as const]),
);

export function takeMeasured({ from, to }: MeasuredLine, { type }: LabelMedium, placer: Placer): void {
  placer.take(lineSlot(from, to, 0.2 * type.fine), 'line');
}

/** The line with a bar across each end, and its length along it or level beside it, where there is room. */
export function measuredLabel(
  line: MeasuredLine,
  /** All of the drawing: the length is nearest to its own. */
  all: readonly MeasuredLine[],
  color: ColorRole,
  medium: LabelMedium,
  placer: Placer,
): Label {
  const { from, to, words } = line;
  const size = medium.type.fine;
  const block = blockOf([{ text: words, style: { size, bold: true, color, halo: 'paper' } }], medium.measure);
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const along = turnAlong(from, to);
  const off = block.height / 2 + 0.15 * size;
  const slots = SHARES.flatMap((share) =>
    [-1, 1].flatMap((side): readonly Slot[] => {
      const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      return [
        blockSlot(block, [x - Math.sin(angle) * off * side, y + Math.cos(angle) * off * side], along),
        blockSlot(block, [x + side * (block.width / 2 + 0.3 * size), y]),
        ...LEVEL.map(([shift, gap]) =>
          blockSlot(block, [x + side * shift * block.width, y + Math.sign(gap) * off + gap * size]),
        ),
      ];
    }),
  );
  const isOwn = (slot: Slot) => all.every((other) => other === line || gapTo(slot, other) > gapTo(slot, line));
  const fits = (slot: Slot) => placer.isFree(slot, ['edge', 'thing']) && isOwn(slot);
  const onPlate = (slot: Slot) => placer.isFree(slot, ['edge', 'thing', 'outline']) && isOwn(slot);
  // Along the line where it is long enough, else level beside it, at last on a plate that hides an outline.
  const free = slots.find((one) => one.turn === along && fits(one)) ?? slots.find(fits);
  const slot = free ?? slots.find(onPlate);
  if (!slot) return { texts: [], shapes: [tape(from, to, size, color)], slots: [] };
  placer.take(slot);
  return {
    texts: blockTexts(block, [slot.x, slot.y], slot.turn),
    shapes: [
      ...(free ? [] : [{ ink: { fill: 'paper' }, parts: [slotPart(slot)] } as const]),
      tape(from, to, size, color),
    ],
    slots: [slot],
  };
}

/** From the middle of a slot to a line. */
function gapTo({ x, y }: Slot, { from, to }: MeasuredLine): number {
  const [px, py] = nearestOnRing([x, y], [from, to]);
  return Math.hypot(px - x, py - y);
}

/**
 * Where an upright figure may stand, the best first: on its line where that is long enough, beside it, past its end, farther beside it;
 * at last on a line that is shorter than the figure.
 */
export function figureSlots([a, b]: Line, width: number, height: number): readonly Slot[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = long > 0 ? [(b[0] - a[0]) / long, (b[1] - a[1]) / long] : [1, 0];
  // How much of the line the figure hides, and how far it reaches across it.
  const hidden = Math.min(width / Math.max(Math.abs(ux), 1e-9), height / Math.max(Math.abs(uy), 1e-9));
  const across = Math.abs(uy) * width + Math.abs(ux) * height;
  const at = (along: number, off: number) =>
    blockSlot({ width, height }, [a[0] + ux * along - uy * off, a[1] + uy * along + ux * off]);
  const on = [0.5, 0.68, 0.32, 0.85].map((share) => at(share * long, 0));
  const beside = [-1, 1].map((side) => at(long / 2, side * (across / 2 + 5)));
  const past = at(long + hidden / 2 + 8, 0);
  const farther = [-1, 1].map((side) => at(long / 2, side * (across * 1.5 + 5)));
  return long > hidden + 8 ? [...on, ...beside, past, ...farther] : [...beside, past, ...farther, ...on];
}

/** A line with a bar across each end. */
export function tape(from: XY, to: XY, size: number, color: ColorRole): Shape {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [nx, ny] = [(-(to[1] - from[1]) / length) * size * 0.4, ((to[0] - from[0]) / length) * size * 0.4];
  const bars = [from, to].map(([x, y]): readonly XY[] => [
    [x - nx, y - ny],
    [x + nx, y + ny],
  ]);
  return { ink: { line: 'measured', color }, parts: [linesPart([[from, to], ...bars])] };
}
