import type { Verdict } from '../../../geometry/check/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { RADIUS_PX } from '../../design/tokens.ts';
import type { SizePx } from '../../state/viewport.ts';
import type { Pen } from './pen.ts';
import { stroke } from './pen.ts';
import { drawText, type TextStyle, textWidth } from './text.ts';

/** A few words on a small card beside the pointer: never over what the pointer is on. */
export interface PointerNote {
  readonly at: XY;
  /** A verdict in its tone, large, before the lines; null for plain lines. */
  readonly verdict: { readonly tone: Verdict; readonly word: string } | null;
  readonly lines: readonly string[];
  /** Above the spot with more room: for a finger. */
  readonly aboveFinger: boolean;
}

const PAD = 9;
const LINE_PX = 20;
const HEAD_PX = 30;

export function paintNote(pen: Pen, note: PointerNote, stage: SizePx): void {
  const { ctx, theme } = pen;
  const line: TextStyle = { sizePx: 15, colour: theme.ink };
  const head: TextStyle = {
    sizePx: 22,
    bold: true,
    colour: note.verdict ? theme.verdict[note.verdict.tone].line : theme.ink,
  };
  const widths = note.lines.map((text) => textWidth(pen, text, line));
  if (note.verdict) widths.push(textWidth(pen, note.verdict.word, head));
  const width = Math.max(...widths, 0) + 2 * PAD;
  const height = (note.verdict ? HEAD_PX : 0) + note.lines.length * LINE_PX + 2 * PAD - 4;
  const [left, top] = placed(note, width, height, stage);
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
  for (const text of note.lines) put(text, line, LINE_PX);
}

/** To the lower right of a pointer, above a finger; turned round at the edges of the stage. */
function placed({ at: [x, y], aboveFinger }: PointerNote, width: number, height: number, stage: SizePx): XY {
  if (aboveFinger) {
    const left = Math.min(stage.width - width - 8, Math.max(8, x - width / 2));
    const above = y - height - 34;
    return [left, above >= 8 ? above : y + 130];
  }
  const left = x + 20 + width > stage.width ? x - 20 - width : x + 20;
  const top = y + 22 + height > stage.height ? y - 22 - height : y + 22;
  return [Math.max(8, left), Math.max(8, top)];
}
