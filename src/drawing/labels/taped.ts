import { along, distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { dimensionLine } from './dimensions.ts';
import type { Label, LabelSheet } from './label.ts';
import { lineSlot, type Slot, slotAt, turnAlong } from './slot.ts';

/** A tape from a detector's rim to the face of a wall, plan mm. */
export interface TapedGap {
  readonly line: Line;
  readonly words: string;
  /** Only one tape of each key is drawn: detectors side by side are equally far from a wall. */
  readonly key: string;
}

/** Positions of a figure on its line in the order tried, as shares of the line. */
const SHARES = [0.5, 0.36, 0.64, 0.24, 0.76] as const;
/** Gap on each side of a figure, and width of the ground that a tape takes, as multiples of the type size. */
const GAP = 0.4;
const ACROSS = 0.3;

/** Takes the ground of the tapes, so that tags are placed beside them. */
export function takeTapes(taped: readonly TapedGap[], sheet: LabelSheet): void {
  for (const { line, key } of taped) sheet.placer.take(slotOf(line, sheet), 'line', key);
}

/** Returns the tapes for which there is room: fine lines with the length in a gap. */
export function tapedLabels(taped: readonly TapedGap[], sheet: LabelSheet): readonly Label[] {
  const drawn = new Set<string>();
  return taped.flatMap((gap) => {
    const label = drawn.has(gap.key) ? null : tapedLabel(gap, sheet);
    if (label) drawn.add(gap.key);
    return label ?? [];
  });
}

function tapedLabel({ line, words, key }: TapedGap, sheet: LabelSheet): Label | null {
  const { placer, type, measure } = sheet;
  const [a, b] = line;
  const style = { size: type.fine, color: 'dimension', halo: 'paper' } as const;
  const size = { width: measure(words, style) + 2 * GAP * style.size, height: style.size };
  const length = distance(a, b);
  if (length < size.width + style.size || !placer.isFree(slotOf(line, sheet), ['thing', 'outline', 'wall', 'line']))
    return null;
  for (const share of SHARES) {
    if (Math.min(share, 1 - share) * length < size.width / 2 + style.size / 2) continue;
    const slot = slotAt(size, along(a, b, share), turnAlong(a, b));
    if (!placer.isFree(slot, ['thing'], key)) continue;
    placer.take(slot);
    const text = { text: words, at: [slot.x, slot.y], turn: slot.turn, style } as const;
    return { texts: [text], shapes: [dimensionLine(a, b, style.size, slot.width, share)], slots: [slot] };
  }
  return null;
}

/** Slot of the part of the line beyond the symbol at its start. */
function slotOf([a, b]: Line, { symbol, type }: LabelSheet): Slot {
  const start = Math.min(1, (1.5 * symbol) / (distance(a, b) || 1));
  return lineSlot(along(a, b, start), b, ACROSS * type.fine);
}
