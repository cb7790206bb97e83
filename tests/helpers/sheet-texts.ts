/** Reads the texts of a page with their bounding boxes from its SVG. Lengths in mm of paper. */
import { CAP_HEIGHT, DESCENT } from '../../src/drawing/text.ts';
import { textWidth } from '../../src/report/text.ts';

export interface SheetText {
  readonly text: string;
  /** Center, size and rotation of the bounding box. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
}

/** Returns the texts. The halo of a text may be a separate text in the SVG, at the same place: both count as one. */
export function sheetTexts(svg: string): readonly SheetText[] {
  const texts = new Map<string, SheetText>();
  for (const [, attributes = '', content = ''] of svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)) {
    const ground = groundOf(attributes, unescaped(content));
    texts.set(`${ground.text} ${ground.x} ${ground.y}`, ground);
  }
  return [...texts.values()];
}

function groundOf(attributes: string, text: string): SheetText {
  const number = (name: string) => Number(new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1] ?? Number.NaN);
  const size = number('font-size');
  const width = textWidth(text, { size, weight: attributes.includes('font-weight="700"') ? 'bold' : 'regular' });
  const anchor = /text-anchor="(\w+)"/.exec(attributes)?.[1] ?? 'start';
  const shift = { start: width / 2, middle: 0, end: -width / 2 }[anchor] ?? 0;
  const height = size * (CAP_HEIGHT + DESCENT);
  const flat = { x: number('x') + shift, y: number('y') - size * CAP_HEIGHT + height / 2 };
  const turned = /rotate\(([-\d.]+) ([-\d.]+) ([-\d.]+)\)/.exec(attributes);
  if (!turned) return { text, ...flat, width, height, turn: 0 };
  const [turn = 0, cx = 0, cy = 0] = turned.slice(1).map(Number);
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [dx, dy] = [flat.x - cx, flat.y - cy];
  return { text, x: cx + dx * cos - dy * sin, y: cy + dx * sin + dy * cos, width, height, turn };
}

function unescaped(text: string): string {
  return text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}
