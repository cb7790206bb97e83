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

/** A few words on a small card beside the pointer: never over what the pointer is on. */
export interface PointerNote {
  readonly at: XY;
  /** A verdict in its tone, large, before the lines; null for plain lines. */
  readonly verdict: { readonly tone: Tone; readonly word: string } | null;
  readonly lines: readonly string[];
  /** By a finger: the card then stands at the edge of the stage, where no hand hides it and it hides no spot. */
  readonly byTouch: boolean;
}

const PAD = 9;
const LINE_PX = 20;
const HEAD_PX = 30;
/** A longer line is broken between words. */
const WIDEST_PX = 290;
/** A detector lower than this share of the stage has its card at the top. */
const DOCK_SHARE = 0.42;
/** A stage that is not so many times as high as the card has it on the left or right. */
const DOCK_ROOM = 3;
const LINE: TextStyle = { size: TYPE_PX.read, color: 'ink' };

/** @param placer what is written and drawn about the pointer */
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

/** On which side of the pointer the last note stood. */
let lastSide = -1;

function beside(at: XY, size: SizePx, stage: SizePx, placer: OverlayPlacer): XY {
  const place = notePlace(at, size, stage, placer, lastSide);
  lastSide = place.side;
  return place.at;
}

/** For a finger at the edge of the stage that the hand is away from; beside the spot where a low stage has no room above it. */
function docked([x, y]: XY, { width, height }: SizePx, stage: SizePx): XY {
  if (stage.height < DOCK_ROOM * height) return [x > stage.width / 2 ? 8 : stage.width - width - 8, 8];
  return [(stage.width - width) / 2, y > stage.height * DOCK_SHARE ? 8 : stage.height - height - 8];
}

/** So far off the pointer, px: past the detector that it carries, then further where there all is taken. */
const OFFS_PX = [22, 60, 110, 170] as const;
/** A note stays so far inside the stage, px. */
const EDGE_PX = 4;
/** A measured line weighs like writing of this height, px: under a note neither can be read. */
const STRIP_PX = 24;
/** A px further from the pointer weighs so many px²: a note that is near is read without looking for it. */
const FAR_WEIGHT = 5;
/** A note stays on its side of the pointer until another one hides so much less: it must not jump about while one drags. */
const STAYS = 0.6;

/** Takes the ground of a measured line, as squares along it. */
export function takeStrip(placer: Pick<OverlayPlacer, 'take'>, [a, b]: Line): void {
  const pieces = Math.max(1, Math.ceil(distance(a, b) / STRIP_PX));
  const square = { width: distance(a, b) / pieces, height: STRIP_PX };
  for (let i = 0; i < pieces; i++) placer.take(slotAt(square, along(a, b, (i + 0.5) / pieces)));
}

/** The upper left corner of a note, and which of the places about the pointer it is; -1 for none of them. */
interface NotePlace {
  readonly at: XY;
  readonly side: number;
}

/**
 * Where a note of this size stands: near the pointer, inside the stage, where it hides least, and never over the pointer.
 * @param side where it stood before
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
    const hidden = placer.covered(slotAt({ width, height }, [left + width / 2, top + height / 2]));
    const cost = (hidden + FAR_WEIGHT * far) * (index === side ? STAYS : 1);
    if (cost < least) [best, least] = [{ at: place, side: index }, cost];
  }
  return best;
}

/** About the pointer in eight directions, nearer ones first; then the corners of the stage. */
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
