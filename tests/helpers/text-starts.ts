/** Reads the starting points of the texts of a drawn page from its SVG. Lengths in mm of paper. */
import { textWidth } from '../../src/report/text.ts';

export interface TextStart {
  readonly text: string;
  /** Start of the baseline in reading direction. */
  readonly x: number;
  readonly y: number;
}

/** Returns every text that is not empty, in the order of the document. */
export function textStarts(svg: string): readonly TextStart[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].flatMap(([, attributes = '', content = '']) => {
    const text = unescaped(content);
    return text.trim() === '' ? [] : [{ text, ...startOf(attributes, text) }];
  });
}

function startOf(attributes: string, text: string) {
  const of = (name: string) => Number(new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1]);
  const weight = attributes.includes('font-weight="700"') ? 'bold' : 'regular';
  const anchor = /text-anchor="(\w+)"/.exec(attributes)?.[1] ?? 'start';
  const share = { start: 0, middle: 0.5, end: 1 }[anchor] ?? 0;
  const [x, y] = [of('x') - share * textWidth(text, { size: of('font-size'), weight }), of('y')];
  const [, turn = 0, cx = 0, cy = 0] = (/rotate\(([-\d.]+) ([-\d.]+) ([-\d.]+)\)/.exec(attributes) ?? []).map(Number);
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return { x: cx + (x - cx) * cos - (y - cy) * sin, y: cy + (x - cx) * sin + (y - cy) * cos };
}

function unescaped(text: string): string {
  return text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}

/** Returns the letters without spaces, because readers separate words differently. */
export const lettersOf = (texts: readonly string[]): string => texts.join('').replaceAll(/\s/g, '');
