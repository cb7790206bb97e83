import type { XY } from '../../../geometry/plan/model.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { inked, type Part } from '../display-list.ts';
import type { Ink } from '../inks.ts';
import { CAP_HEIGHT, DESCENT, type Drawn, LEADING, type MeasureText, type Text, type TextStyle } from '../text.ts';
import { type Size, type Slot, slotPart, turned } from './slot.ts';

/** A few lines of text about a middle. Lengths are in the units of their type. */
export interface Block extends Size {
  readonly lines: readonly Line[];
}

interface Line {
  readonly text: string;
  readonly style: TextStyle;
}

/** Free ground about the letters, in sizes of the type. */
const AIR = 0.2;

export function blockOf(lines: readonly Line[], measure: MeasureText): Block {
  const [first, last] = [lines[0], lines.at(-1)];
  if (!first || !last) return { lines, width: 0, height: 0 };
  const air = 2 * AIR * first.style.size;
  const steps = lines.slice(1).reduce((sum, { style }) => sum + style.size * LEADING, 0);
  return {
    lines,
    width: Math.max(...lines.map(({ text, style }) => measure(text, style))) + air,
    height: first.style.size * CAP_HEIGHT + steps + last.style.size * DESCENT + air,
  };
}

/** The same text in one line, in two and in three, as far as it can be parted between words. */
export function blockForms(text: string, style: TextStyle, measure: MeasureText): readonly Block[] {
  const widthOf = (line: string) => measure(line, style);
  const whole = widthOf(text);
  const words = wordsOf(text);
  const longest = Math.max(0, ...words.map(widthOf));
  const forms = [[text]];
  for (const parts of [2, 3]) {
    for (let width = Math.max(whole / parts, longest); width < whole; width += style.size * 0.5) {
      const lines = wrapWords(words, width, widthOf);
      if (lines.length > parts) continue;
      if (lines.length === parts) forms.push(lines);
      break;
    }
  }
  return forms.map((lines) => {
    const styled = lines.map((line) => ({ text: line, style }));
    return blockOf(styled, measure);
  });
}

/** A figure and its unit are one word. */
export function wordsOf(text: string): readonly string[] {
  return unbrokenFigures(text).split(/ +/);
}

/** Words in lines no wider than `width`; a word that is wider by itself has a line of its own. */
export function wrapWords(words: readonly string[], width: number, measure: (line: string) => number): string[] {
  const lines: string[] = [];
  for (const word of words) {
    const longer = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A line of text in the middle of a slot that is filled, and edged, to be read over anything. */
export function plateLabel(text: string, style: TextStyle, slot: Slot, ink: Ink, part: Part = slotPart(slot)): Drawn {
  return { shapes: [inked(ink, part)], texts: [{ text, at: [slot.x, slot.y], turn: slot.turn, style }] };
}

/** The lines of a block in its slot. */
export function blockTexts({ lines, height }: Block, { x, y, turn }: Pick<Slot, 'x' | 'y' | 'turn'>): readonly Text[] {
  const first = lines[0]?.style.size ?? 0;
  let down = -height / 2 + (AIR + CAP_HEIGHT / 2) * first;
  return lines.map(({ text, style }, index) => {
    if (index > 0) down += style.size * LEADING;
    const [dx, dy] = turned([0, down], turn);
    const at: XY = [x + dx, y + dy];
    return { text, at, turn, style };
  });
}
