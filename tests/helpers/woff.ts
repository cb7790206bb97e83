/** Reads the WOFF fonts of the app: their tables, and a conversion to OpenType. */
import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';

const FILES = 'node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next';

export type Subset = 'latin' | 'latin-ext';
export type FontWeight = 400 | 700;

export function fontFile(subset: Subset, weight: FontWeight): string {
  return `${FILES}-${subset}-${weight}-normal.woff`;
}

/** Returns the decompressed tables of a WOFF 1.0 file (W3C WOFF File Format 1.0, sections 3 to 5). */
function woffTables(file: string): ReadonlyMap<string, Buffer> {
  const bytes = readFileSync(file);
  const tables = new Map<string, Buffer>();
  for (let i = 0; i < bytes.readUInt16BE(12); i++) {
    const at = 44 + 20 * i;
    const offset = bytes.readUInt32BE(at + 4);
    const packed = bytes.subarray(offset, offset + bytes.readUInt32BE(at + 8));
    const isPacked = packed.length < bytes.readUInt32BE(at + 12);
    tables.set(bytes.toString('latin1', at, at + 4), isPacked ? inflateSync(packed) : packed);
  }
  return tables;
}

/** Returns the font as an OpenType file (OpenType 1.9, "Organization of an OpenType font"). */
export function woffToOpenType(file: string): Buffer {
  const tables = [...woffTables(file)].sort(([a], [b]) => (a < b ? -1 : 1));
  const power = 2 ** Math.floor(Math.log2(tables.length));
  const head = Buffer.alloc(12 + 16 * tables.length);
  head.writeUInt32BE(readFileSync(file).readUInt32BE(4), 0);
  head.writeUInt16BE(tables.length, 4);
  head.writeUInt16BE(power * 16, 6);
  head.writeUInt16BE(Math.log2(power), 8);
  head.writeUInt16BE((tables.length - power) * 16, 10);
  const parts: Buffer[] = [head];
  let offset = head.length;
  tables.forEach(([tag, data], i) => {
    const at = 12 + 16 * i;
    const padded = padTo4(data);
    head.write(tag, at, 'latin1');
    head.writeUInt32BE(checksum(padded), at + 4);
    head.writeUInt32BE(offset, at + 8);
    head.writeUInt32BE(data.length, at + 12);
    parts.push(padded);
    offset += padded.length;
  });
  return Buffer.concat(parts);
}

/** Returns code point → advance in thousandths of the type size, for every character of the font. */
export function advanceWidths(file: string): ReadonlyMap<number, number> {
  const tables = woffTables(file);
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

function padTo4(data: Buffer): Buffer {
  return Buffer.concat([data, Buffer.alloc((4 - (data.length % 4)) % 4)]);
}

function checksum(padded: Buffer): number {
  let sum = 0;
  for (let i = 0; i < padded.length; i += 4) sum = (sum + padded.readUInt32BE(i)) >>> 0;
  return sum;
}
