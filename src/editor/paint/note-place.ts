import type { XY } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { slotAt } from '../../drawing/labels/slot.ts';
import type { SizePx } from '../../state/viewport.ts';
import type { OverlayPlacer } from './names/overlay-placer.ts';

/** What a note should not hide: what is written and drawn about the pointer, and the lines that are measured. Screen px. */
export interface NoteGround {
  readonly placer: Pick<OverlayPlacer, 'covered'>;
  readonly lines: readonly Line[];
}

/** So far off the pointer, px: past the detector that it carries, then further where there all is taken. */
const OFFS_PX = [22, 60, 110, 170] as const;
/** A note stays so far inside the stage, px. */
const EDGE_PX = 4;
/** A px of a measured line weighs as so many px² of what is written: under a note neither can be read. */
const LINE_WEIGHT = 24;
/** A px further from the pointer weighs so many px²: a note that is near is read without looking for it. */
const FAR_WEIGHT = 5;
/** A note stays on its side of the pointer until another one hides so much less: it must not jump about while one drags. */
const STAYS = 0.6;

export interface NotePlace {
  /** The upper left corner. */
  readonly at: XY;
  /** Which of the places about the pointer it is; -1 for none of them. */
  readonly side: number;
}

/**
 * Where a note of this size stands: near the pointer, inside the stage, where it hides least, and never over the pointer.
 * @param side where it stood before
 */
export function notePlace(at: XY, size: SizePx, stage: SizePx, ground: NoteGround, side = -1): NotePlace {
  const fits = ([left, top]: XY) =>
    left >= EDGE_PX &&
    top >= EDGE_PX &&
    left + size.width <= stage.width - EDGE_PX &&
    top + size.height <= stage.height - EDGE_PX &&
    !holds([left, top], size, at);
  let best: NotePlace | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [index, place] of candidates(at, size, stage).entries()) {
    if (!fits(place)) continue;
    const cost = costOf(at, place, size, ground) * (index === side ? STAYS : 1);
    if (cost < least) {
      least = cost;
      best = { at: place, side: index };
    }
  }
  const [x, y] = at;
  const off = OFFS_PX[0];
  const last: XY = [Math.min(x + off, stage.width - size.width - 4), Math.min(y + off, stage.height - size.height - 4)];
  return best ?? { at: last, side: -1 };
}

/** About the pointer in eight directions, nearer ones first; then the corners of the stage. */
function candidates([x, y]: XY, { width, height }: SizePx, stage: SizePx): readonly XY[] {
  const about = OFFS_PX.flatMap((off): XY[] => {
    const [right, left, below, above] = [x + off, x - off - width, y + off, y - off - height];
    const [midX, midY] = [x - width / 2, y - height / 2];
    return [
      [right, below],
      [right, above],
      [left, below],
      [left, above],
      [right, midY],
      [left, midY],
      [midX, below],
      [midX, above],
    ];
  });
  const [right, bottom] = [stage.width - width - 8, stage.height - height - 8];
  return [...about, [8, 8], [right, 8], [8, bottom], [right, bottom]];
}

function holds([left, top]: XY, { width, height }: SizePx, [x, y]: XY): boolean {
  const off = OFFS_PX[0] - 2;
  return left < x + off && left + width > x - off && top < y + off && top + height > y - off;
}

function costOf(at: XY, [left, top]: XY, { width, height }: SizePx, { placer, lines }: NoteGround): number {
  const hidden = lines.reduce((sum, line) => sum + lengthWithin(line, left, top, left + width, top + height), 0);
  const far = Math.max(left - at[0], at[0] - left - width, top - at[1], at[1] - top - height);
  return (
    placer.covered(slotAt({ width, height }, [left + width / 2, top + height / 2])) +
    LINE_WEIGHT * hidden +
    FAR_WEIGHT * far
  );
}

/** How much of a line lies within an upright rectangle, px (Liang and Barsky, 1984; from memory). */
export function lengthWithin(
  [[ax, ay], [bx, by]]: Line,
  left: number,
  top: number,
  right: number,
  bottom: number,
): number {
  const [dx, dy] = [bx - ax, by - ay];
  let [enters, leaves] = [0, 1];
  for (const [step, room] of [
    [-dx, ax - left],
    [dx, right - ax],
    [-dy, ay - top],
    [dy, bottom - ay],
  ] as const) {
    if (step === 0) {
      if (room < 0) return 0;
    } else if (step < 0) enters = Math.max(enters, room / step);
    else leaves = Math.min(leaves, room / step);
  }
  return Math.max(0, leaves - enters) * Math.hypot(dx, dy);
}
