/** Text on the sheet, measured with the advance widths of the font, so that text that fits here fits in every renderer. */

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
  /** A white edge around the letters, for text on hatches or lines. */
  readonly halo?: boolean;
}

/**
 * Attributes for the root of a drawing: kerning and ligatures are off, so that texts are as wide as they are measured here, letter by
 * letter.
 */
export const SET_AS_MEASURED: Attributes = {
  'font-family': `'Atkinson Hyperlegible Next', sans-serif`,
  style: 'font-kerning:none;font-variant-ligatures:none',
};

/** Width of a character that another font draws: common ones are not wider than the type size. */
const UNKNOWN_WIDTH = 1000;

const tables = { regular: widthTable(FONT_WIDTHS.regular), bold: widthTable(FONT_WIDTHS.bold) };

/** Spaces that SVG collapses unless the text element itself says to keep them: browsers ignore the setting on the root. */
const SPACES = /^\s|\s\s|\s$/;

/** A word with its advance width in thousandths of the type size. */
interface MeasuredWord {
  readonly word: string;
  readonly wide: number;
}

/** Number of texts whose word widths are cached: a document is laid out in one type size after another until it fits its pages. */
const MOST_KEPT = 2000;
const measured = {
  regular: new Map<string, readonly MeasuredWord[]>(),
  bold: new Map<string, readonly MeasuredWord[]>(),
};

/** Returns the advance width, mm, without kerning: the sheet turns kerning off, so the sum is exact. */
export function textWidth(text: string, { size, weight = 'regular' }: Pick<TextStyle, 'size' | 'weight'>): number {
  return (units(oneLine(text), weight) * size) / 1000;
}

/** Advance width in thousandths of the type size, an integer, so that widths add up exactly. */
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

/** Returns one line of text as SVG. `y` is its baseline. */
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
 * Returns the text in lines no wider than `width`, mm, broken at spaces; a word wider than a line is broken.
 * Empty text gives no lines.
 */
export function wrapText(text: string, width: number, style: TextStyle): readonly string[] {
  const { size, weight = 'regular' } = style;
  const fits = (wide: number) => (wide * size) / 1000 <= width;
  const space = units(' ', weight);
  const lines: string[] = [];
  let current = '';
  let wide = 0;
  // A figure wider than a line is broken at its no-break spaces.
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

/** Returns the same number of lines, of about the same length, for centered text: it avoids a single word in the last line. */
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

/** Returns the text, or as much of its start as fits before "…". Only for texts that are printed whole elsewhere. */
export function shortened(text: string, width: number, style: TextStyle): string {
  return shortenedToWidth(oneLine(text), width, (part) => textWidth(part, style));
}

/** Returns the distance from one baseline to the next, mm. */
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
