/** Names on the drawing: a few lines of text about a middle, on a white edge. */
import type { Slot } from './placer.ts';
import { num } from './svg.ts';
import { CAP_HEIGHT, DESCENT, drawText, lineHeight, type TextStyle, textWidth, wrapText } from './text.ts';

export interface LabelLine {
  readonly text: string;
  readonly style: TextStyle;
}

export interface Label {
  readonly lines: readonly LabelLine[];
  readonly width: number;
  readonly height: number;
}

/** Free paper around the letters, mm. */
const AIR = 0.45;

export function makeLabel(lines: readonly LabelLine[]): Label {
  const [first] = lines;
  const last = lines.at(-1);
  if (!first || !last) return { lines, width: 0, height: 0 };
  const steps = lines.slice(1).reduce((sum, { style }) => sum + lineHeight(style), 0);
  return {
    lines,
    width: Math.max(...lines.map(({ text, style }) => textWidth(text, style))) + 2 * AIR,
    height: first.style.size * CAP_HEIGHT + steps + last.style.size * DESCENT + 2 * AIR,
  };
}

/** The same text in one line, in two and in three, as far as it can be parted between words. */
export function labelForms(text: string, style: TextStyle): readonly Label[] {
  const whole = textWidth(text, style);
  const word = Math.max(0, ...text.split(' ').map((one) => textWidth(one, style)));
  const forms = [makeLabel([{ text, style }])];
  for (const parts of [2, 3]) {
    for (let width = Math.max(whole / parts, word); width < whole; width += style.size * 0.5) {
      const lines = wrapText(text, width, style);
      if (lines.length > parts) continue;
      if (lines.length === parts) forms.push(makeLabel(lines.map((one) => ({ text: one, style }))));
      break;
    }
  }
  return forms;
}

export function labelSlot({ width, height }: Label, x: number, y: number, turn = 0): Slot {
  return { x, y, width, height, turn };
}

/** The label with its middle at a place. All edges come before all letters, so that no line eats into the one above. */
export function drawLabel({ lines, height }: Label, x: number, y: number, turn = 0): string {
  const [first] = lines;
  if (!first) return '';
  const more = turn === 0 ? {} : { transform: `rotate(${num(turn)} ${num(x)} ${num(y)})` };
  const pass = (halo: boolean) => {
    let baseline = y - height / 2 + AIR + first.style.size * CAP_HEIGHT;
    return lines.map(({ text, style }, i) => {
      if (i > 0) baseline += lineHeight(style);
      return drawText(x, baseline, text, { ...style, halo, anchor: 'middle' }, more);
    });
  };
  return [...pass(true), ...pass(false)].join('');
}
