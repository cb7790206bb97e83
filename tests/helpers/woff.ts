/** Reads the WOFF fonts of the app. */
import { readFileSync } from 'node:fs';
import { woffTables } from '../../src/cli/paper/woff.ts';

const FILES = 'node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next';

export type Subset = 'latin' | 'latin-ext';
export type FontWeight = 400 | 700;

export function fontFile(subset: Subset, weight: FontWeight): string {
  return `${FILES}-${subset}-${weight}-normal.woff`;
}

/** Returns code point → advance in thousandths of the type size, for every character of the font. */
export function advanceWidths(file: string): ReadonlyMap<number, number> {
  const tables = woffTables(readFileSync(file));
  const unitsPerEm = tableOf(tables, 'head').readUInt16BE(18);
  const count = tableOf(tables, 'hhea').readUInt16BE(34);
  const hmtx = tableOf(tables, 'hmtx');
  const width = (glyph: number) => (hmtx.readUInt16BE(4 * Math.min(glyph, count - 1)) * 1000) / unitsPerEm;
  return new Map([...characters(tableOf(tables, 'cmap'))].map(([code, glyph]) => [code, Math.round(width(glyph))]));
}

/** Format 4 subtable: segments of code points (OpenType, cmap). */
function* characters(cmap: Buffer): Generator<readonly [code: number, glyph: number]> {
  const sub = cmap.subarray(cmap.readUInt32BE(8));
  if (sub.readUInt16BE(0) !== 4) throw new Error(`cmap format ${sub.readUInt16BE(0)}, expected 4`);
  const segments = sub.readUInt16BE(6) / 2;
  for (let i = 0; i < segments; i++) {
    const end = sub.readUInt16BE(14 + 2 * i);
    const start = sub.readUInt16BE(16 + 2 * segments + 2 * i);
    const delta = sub.readInt16BE(16 + 4 * segments + 2 * i);
    const rangeAt = 16 + 6 * segments + 2 * i;
    const range = sub.readUInt16BE(rangeAt);
    for (let code = start; code <= end && code !== 0xffff; code++) {
      const direct = (code + delta) & 0xffff;
      const glyph = range === 0 ? direct : sub.readUInt16BE(rangeAt + range + 2 * (code - start));
      if (glyph !== 0) yield [code, glyph];
    }
  }
}

function tableOf(tables: ReadonlyMap<string, Buffer>, tag: string): Buffer {
  const table = tables.get(tag);
  if (!table) throw new Error(`the font has no table "${tag}"`);
  return table;
}
