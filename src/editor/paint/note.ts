import type { Tone } from '../../../geometry/messages/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { along, distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { inked } from '../../drawing/display-list.ts';
import type { ColorRole } from '../../drawing/inks.ts';
import { wordsOf, wrapWords } from '../../drawing/labels/label.ts';
import { pairs, roundedPart, slotAt } from '../../drawing/labels/slot.ts';
import { type Drawn, type TextStyle, textAt } from '../../drawing/text.ts';
import type { SizePx } from '../../state/viewport.ts';
import { RADIUS_PX, TYPE_PX } from '../../theme/tokens.ts';
import type { OverlayPlacer } from './names/overlay-placer.ts';
import type { Pen } from './pen.ts';

/** A few words on a small card beside the pointer. */
export interface PointerNote {
  readonly at: XY;
  /** A verdict in its tone, large, before the lines; null for plain lines. */
  readonly verdict: { readonly tone: Tone; readonly word: string } | null;
  readonly lines: readonly string[];
  /**
   * Whether it is for a finger: the card is then at the edge of the stage, where the hand does not hide it and it does not hide the spot.
   */
  readonly byTouch: boolean;
}

const PAD = 9;
const LINE_PX = 20;
const HEAD_PX = 30;
/** A longer line is broken between words. */
const WIDEST_PX = 290;
/** A spot below this share of the stage's height has its card at the top. */
const DOCK_SHARE = 0.42;
/** A stage less than this many times as high as the card has the card on the left or right. */
const DOCK_ROOM = 3;
const LINE: TextStyle = { size: TYPE_PX.read, color: 'ink' };

/** @param placer the texts and lines that the note should not cover */
export function drawnNote(
  { measure }: Pen,
  { at, verdict, lines, byTouch }: PointerNote,
  stage: SizePx,
  placer: OverlayPlacer,
): Drawn {
  const color: ColorRole = verdict?.tone ?? 'edge';
  const rows = [
    ...(verdict ? [{ text: verdict.word, style: { size: TYPE_PX.head, bold: true, color }, height: HEAD_PX }] : []),
    ...lines
      .flatMap((text) => wrapWords(wordsOf(text), WIDEST_PX, (line) => measure(line, LINE)))
      .map((text) => ({ text, style: LINE, height: LINE_PX })),
  ];
  const widths = rows.map(({ text, style }) => measure(text, style));
  const size = {
    width: Math.max(...widths, 0) + 2 * PAD,
    height: rows.reduce((sum, { height }) => sum + height, 2 * PAD - 4),
  };
  const [left, top] = byTouch ? docked(at, size, stage) : beside(at, size, stage, placer);
  const card = roundedPart(slotAt(size, [left + size.width / 2, top + size.height / 2]), RADIUS_PX.card);
  let y = top + PAD - 2;
  return {
    shapes: [inked({ fill: 'card', opacity: 0.96 }, card), inked({ line: 1, color }, card)],
    texts: rows.map(({ text, style, height }, i) => {
      y += height;
      return textAt(text, [left + PAD + (widths[i] ?? 0) / 2, y - height / 2], style);
    }),
  };
}

/** Index of the place beside the pointer that the last note had. */
let lastSide = -1;

function beside(at: XY, size: SizePx, stage: SizePx, placer: OverlayPlacer): XY {
  const place = notePlace(at, size, stage, placer, lastSide);
  lastSide = place.side;
  return place.at;
}

/**
 * The place of a note for a finger: at the top or bottom edge, away from the spot; on a low stage in the upper corner on the other side.
 */
function docked([x, y]: XY, { width, height }: SizePx, stage: SizePx): XY {
  if (stage.height < DOCK_ROOM * height) return [x > stage.width / 2 ? 8 : stage.width - width - 8, 8];
  return [(stage.width - width) / 2, y > stage.height * DOCK_SHARE ? 8 : stage.height - height - 8];
}

/** Distances from the pointer that are tried, px: past the detector that is dragged, then farther if all places there are taken. */
const OFFS_PX = [22, 60, 110, 170] as const;
/** Least distance of a note from the edge of the stage, px. */
const EDGE_PX = 4;
/** A measured line counts as text of this height, px, since a note must not hide it. */
const STRIP_PX = 24;
/** Cost of each px of distance from the pointer, px² of hidden text: a note that is near is found at once. */
const FAR_WEIGHT = 5;
/** Factor for the cost of the place that the note has already, so that it does not jump from place to place during a drag. */
const STAYS = 0.6;

/** Takes the ground of a measured line, as slots along it. */
export function takeStrip(placer: Pick<OverlayPlacer, 'take'>, [a, b]: Line): void {
  const pieces = Math.max(1, Math.ceil(distance(a, b) / STRIP_PX));
  const square = { width: distance(a, b) / pieces, height: STRIP_PX };
  for (let i = 0; i < pieces; i++) placer.take(slotAt(square, along(a, b, (i + 0.5) / pieces)));
}

/** The upper left corner of a note, px, and the index of its place around the pointer; -1 for none of the places. */
interface NotePlace {
  readonly at: XY;
  readonly side: number;
}

/**
 * Returns the place of a note of this size: near the pointer but not over it, inside the stage, where it hides the least. If no place is
 * inside the stage, the note is below and to the right, and may cover the pointer.
 * @param side index of the place that it had before
 */
export function notePlace(
  at: XY,
  { width, height }: SizePx,
  stage: SizePx,
  placer: Pick<OverlayPlacer, 'covered'>,
  side = -1,
  offs: readonly number[] = OFFS_PX,
): NotePlace {
  const [right, bottom] = [stage.width - width, stage.height - height];
  const last: XY = [Math.min(at[0] + OFFS_PX[0], right - EDGE_PX), Math.min(at[1] + OFFS_PX[0], bottom - EDGE_PX)];
  let best: NotePlace = { at: last, side: -1 };
  let least = Number.POSITIVE_INFINITY;
  for (const [index, place] of candidates(at, { width, height }, stage, offs).entries()) {
    const [left, top] = place;
    const far = Math.max(left - at[0], at[0] - left - width, top - at[1], at[1] - top - height);
    const isInside = Math.min(left, top, right - left, bottom - top) >= EDGE_PX;
    if (!isInside || far < OFFS_PX[0] - 2) continue;
    const factor = index === side ? STAYS : 1;
    // Even if it hid nothing it would not be the best.
    if (FAR_WEIGHT * far * factor >= least) continue;
    const hidden = placer.covered(slotAt({ width, height }, [left + width / 2, top + height / 2]));
    const cost = (hidden + FAR_WEIGHT * far) * factor;
    if (cost < least) [best, least] = [{ at: place, side: index }, cost];
  }
  return best;
}

/** Upper left corners around the pointer in eight directions, nearer ones first; then in the corners of the stage. */
function candidates([x, y]: XY, { width, height }: SizePx, stage: SizePx, offs: readonly number[]): readonly XY[] {
  const about = offs.flatMap((off) => {
    const [across, down] = [
      [x + off, x - off - width],
      [y + off, y - off - height],
    ];
    return [...pairs(across, down), ...pairs(across, [y - height / 2]), ...pairs([x - width / 2], down)];
  });
  return [...about, ...pairs([8, stage.width - width - 8], [8, stage.height - height - 8])];
}
