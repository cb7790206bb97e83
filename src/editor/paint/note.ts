import type { Tone } from '../../../geometry/messages/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { ColorRole } from '../../drawing/inks.ts';
import { wordsOf, wrapWords } from '../../drawing/labels/block.ts';
import { roundedPart } from '../../drawing/labels/slot.ts';
import type { Drawn } from '../../drawing/text.ts';
import { type TextStyle, textAt } from '../../drawing/text.ts';
import type { SizePx } from '../../state/viewport.ts';
import { RADIUS_PX, TYPE_PX } from '../../theme/tokens.ts';
import { type NoteGround, notePlace } from './note-place.ts';
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
type Row = { readonly text: string; readonly style: TextStyle; readonly height: number };
const LINE: TextStyle = { size: TYPE_PX.read, color: 'ink' };

export function drawnNote(
  { measure }: Pen,
  { at, verdict, lines, byTouch }: PointerNote,
  stage: SizePx,
  ground: NoteGround,
): Drawn {
  const color: ColorRole = verdict?.tone ?? 'edge';
  const rows: readonly Row[] = [
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
  const [left, top] = byTouch ? docked(at, size, stage) : beside(at, size, stage, ground);
  const slot = { ...size, x: left + size.width / 2, y: top + size.height / 2, turn: 0 };
  const card = roundedPart(slot, RADIUS_PX.card);
  let y = top + PAD - 2;
  return {
    shapes: [
      { ink: { fill: 'card', opacity: 0.96 }, parts: [card] },
      { ink: { line: 1, color }, parts: [card] },
    ],
    texts: rows.map(({ text, style, height }, i) => {
      y += height;
      return textAt(text, [left + PAD + (widths[i] ?? 0) / 2, y - height / 2], style);
    }),
  };
}

/** On which side of the pointer the last note stood. */
let lastSide = -1;

function beside(at: XY, size: SizePx, stage: SizePx, ground: NoteGround): XY {
  const place = notePlace(at, size, stage, ground, lastSide);
  lastSide = place.side;
  return place.at;
}

/** For a finger at the edge of the stage that the hand is away from. */
function docked([, y]: XY, { width, height }: SizePx, stage: SizePx): XY {
  return [(stage.width - width) / 2, y > stage.height * DOCK_SHARE ? 8 : stage.height - height - 8];
}
