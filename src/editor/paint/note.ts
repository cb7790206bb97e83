import type { Tone } from '../../../geometry/messages/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { SizePx } from '../../state/viewport.ts';
import { RADIUS_PX, TYPE_PX } from '../../theme/tokens.ts';
import { type NoteGround, notePlace } from './note-place.ts';
import { type Pen, stroke } from './pen.ts';
import { drawText, type TextStyle, textWidth } from './text.ts';

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
const WIDEST_PX = 290;
/** A detector lower than this share of the stage has its card at the top. */
const DOCK_SHARE = 0.42;

export function paintNote(pen: Pen, note: PointerNote, stage: SizePx, ground: NoteGround): void {
  const { ctx, theme } = pen;
  const line: TextStyle = { sizePx: TYPE_PX.read, color: theme.ink };
  const head: TextStyle = {
    sizePx: TYPE_PX.head,
    bold: true,
    color: note.verdict ? theme.verdict[note.verdict.tone].line : theme.ink,
  };
  const lines = note.lines.flatMap((text) => wrapped(pen, text, line));
  const widths = lines.map((text) => textWidth(pen, text, line));
  if (note.verdict) widths.push(textWidth(pen, note.verdict.word, head));
  const width = Math.max(...widths, 0) + 2 * PAD;
  const height = (note.verdict ? HEAD_PX : 0) + lines.length * LINE_PX + 2 * PAD - 4;
  const [left, top] = note.byTouch
    ? docked(note.at, width, height, stage)
    : beside(note.at, { width, height }, stage, ground);
  ctx.beginPath();
  ctx.roundRect(left, top, width, height, RADIUS_PX.card);
  ctx.fillStyle = theme.card;
  ctx.globalAlpha = 0.96;
  ctx.fill();
  ctx.globalAlpha = 1;
  stroke(pen, note.verdict ? theme.verdict[note.verdict.tone].line : theme.edge, 1);
  let y = top + PAD - 2;
  const put = (text: string, style: TextStyle, step: number) => {
    drawText(pen, text, [left + PAD + textWidth(pen, text, style) / 2, y + step / 2], style);
    y += step;
  };
  if (note.verdict) put(note.verdict.word, head, HEAD_PX);
  for (const text of lines) put(text, line, LINE_PX);
}

/** On which side of the pointer the last note stood. */
let lastSide = -1;

function beside(at: XY, size: SizePx, stage: SizePx, ground: NoteGround): XY {
  const place = notePlace(at, size, stage, ground, lastSide);
  lastSide = place.side;
  return place.at;
}

/** For a finger at the edge of the stage that the hand is away from. */
function docked([, y]: XY, width: number, height: number, stage: SizePx): XY {
  return [(stage.width - width) / 2, y > stage.height * DOCK_SHARE ? 8 : stage.height - height - 8];
}

/** Broken between words where it is wider than a card should be. */
function wrapped(pen: Pen, text: string, style: TextStyle): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(pen, longer, style) <= WIDEST_PX) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
