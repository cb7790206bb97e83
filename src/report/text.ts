/** Text on the sheet: measured with the widths of the font itself, so that what fits here fits in every renderer. */

import { oneLine } from '../../geometry/messages/plain-text.ts';
import { wordsOf } from '../drawing/labels/label.ts';
import { LEADING, shortened as shortenedToWidth } from '../drawing/text.ts';
import { FONT_WIDTHS, type WidthRun } from './font-widths.ts';
import { COLOR } from './style.ts';
import { type Attributes, element, escapeXml } from './svg.ts';

type Weight = 'regular' | 'bold';

export interface TextStyle {
  /** Type size, mm. */
  readonly size: number;
  readonly weight?: Weight;
  readonly color?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** A white edge around the letters, for text that lies on hatches or lines. */
  readonly halo?: boolean;
}

/**
 * On the root of a drawing: its texts are as wide as they are measured here, letter by letter, so letters are not moved together or
 * joined.
 */
export const SET_AS_MEASURED: Attributes = {
  'font-family': `'Atkinson Hyperlegible Next', sans-serif`,
  style: 'font-kerning:none;font-variant-ligatures:none',
};

/** A character that the font does not have is drawn by another font; nothing common is wider than the size itself. */
const UNKNOWN_WIDTH = 1000;

const tables = { regular: widthTable(FONT_WIDTHS.regular), bold: widthTable(FONT_WIDTHS.bold) };

/** Spaces that SVG leaves out where it is not told to keep them, on the text itself: browsers do not look at the root for it. */
const SPACES = /^\s|\s\s|\s$/;

/** A word with its advance width in thousandths of the type size. */
interface MeasuredWord {
  readonly word: string;
  readonly wide: number;
}

/** Texts whose words are kept measured: a document is set in one type size after another until it fits its pages. */
const MOST_KEPT = 2000;
const measured = {
  regular: new Map<string, readonly MeasuredWord[]>(),
  bold: new Map<string, readonly MeasuredWord[]>(),
};

/** Advance width in mm, without kerning: the sheet switches kerning off, so the sum is exact. */
export function textWidth(text: string, { size, weight = 'regular' }: Pick<TextStyle, 'size' | 'weight'>): number {
  return (units(oneLine(text), weight) * size) / 1000;
}

/** Advance width in thousandths of the type size, a whole number: those of two texts add up to that of both. */
function units(text: string, weight: Weight): number {
  const table = tables[weight];
  let sum = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.codePointAt(i) ?? 0;
    if (code > 0xffff) i++; // a pair of surrogates is one character
    sum += table.get(code) ?? UNKNOWN_WIDTH;
  }
  return sum;
}

/** One line of text. `y` is its baseline. */
export function drawText(x: number, y: number, text: string, style: TextStyle, more: Attributes = {}): string {
  const { size, weight = 'regular', color = COLOR.ink, anchor = 'start', halo = false } = style;
  const edge = halo
    ? { stroke: COLOR.paper, 'stroke-width': size * 0.32, 'stroke-linejoin': 'round', 'paint-order': 'stroke' }
    : {};
  return element(
    'text',
    {
      x,
      y,
      'font-size': size,
      'font-weight': weight === 'bold' ? 700 : undefined,
      'xml:space': SPACES.test(text) ? 'preserve' : undefined,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      fill: color,
      ...edge,
      ...more,
    },
    escapeXml(text),
  );
}

/**
 * The text in lines no wider than `width`, broken at spaces; a word that is wider by itself is broken within.
 * Empty text gives no lines.
 */
export function wrapText(text: string, width: number, style: TextStyle): readonly string[] {
  const { size, weight = 'regular' } = style;
  const fits = (wide: number) => (wide * size) / 1000 <= width;
  const space = units(' ', weight);
  const lines: string[] = [];
  let current = '';
  let wide = 0;
  // A figure that is wider than a line is broken at its spaces.
  const words = measuredWords(text, weight).flatMap((each) =>
    fits(each.wide) ? [each] : measuredParts(each.word, width, style),
  );
  for (const { word, wide: more } of words) {
    if (current && fits(wide + space + more)) {
      current += ` ${word}`;
      wide += space + more;
    } else {
      if (current) lines.push(current);
      current = word;
      wide = more;
    }
  }
  return current ? [...lines, current] : lines;
}

/** The same in lines of about the same length: for lines about a middle, where a last word alone looks forgotten. */
export function balancedText(text: string, width: number, style: TextStyle): readonly string[] {
  const lines = wrapText(text, width, style);
  if (lines.length < 2) return lines;
  let [narrow, wide] = [width / lines.length, width];
  while (wide - narrow > 0.5) {
    const middle = (narrow + wide) / 2;
    const fits = wrapText(text, middle, style).length === lines.length;
    if (fits) wide = middle;
    else narrow = middle;
  }
  return wrapText(text, wide, style);
}

/** The text, or as much of its beginning as fits with "…" after it. Only where the whole stands elsewhere. */
export function shortened(text: string, width: number, style: TextStyle): string {
  return shortenedToWidth(oneLine(text), width, (part) => textWidth(part, style));
}

/** From one baseline to the next, mm. */
export function lineHeight({ size }: Pick<TextStyle, 'size'>): number {
  return size * LEADING;
}

function measuredWords(text: string, weight: Weight): readonly MeasuredWord[] {
  const known = measured[weight].get(text);
  if (known) return known;
  const words = wordsOf(oneLine(text))
    .filter(Boolean)
    .map((word) => ({ word, wide: units(word, weight) }));
  if (measured[weight].size >= MOST_KEPT) measured[weight].clear();
  measured[weight].set(text, words);
  return words;
}

/** Returns the parts of a word that is wider than a line. */
function measuredParts(wideWord: string, width: number, style: TextStyle): readonly MeasuredWord[] {
  return wideWord
    .split('\u00a0')
    .flatMap((word) => brokenWord(word, width, style))
    .map((word) => ({ word, wide: units(word, style.weight ?? 'regular') }));
}

function brokenWord(word: string, width: number, style: TextStyle): readonly string[] {
  if (textWidth(word, style) <= width) return [word];
  const parts: string[] = [];
  let current = '';
  for (const character of word) {
    if (current && textWidth(current + character, style) > width) {
      parts.push(current);
      current = '';
    }
    current += character;
  }
  return [...parts, current];
}

function widthTable(runs: readonly WidthRun[]): ReadonlyMap<number, number> {
  return new Map(runs.flatMap(([first, widths]) => widths.map((width, i) => [first + i, width] as const)));
}
