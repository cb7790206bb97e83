import { inflateSync } from 'node:zlib';

/** Returns the decompressed tables of a WOFF 1.0 font by tag (W3C WOFF File Format 1.0, sections 3 to 5). */
export function woffTables(bytes: Buffer): ReadonlyMap<string, Buffer> {
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
export function woffToOpenType(bytes: Buffer): Buffer {
  const tables = [...woffTables(bytes)].sort(([a], [b]) => (a < b ? -1 : 1));
  const power = 2 ** Math.floor(Math.log2(tables.length));
  const head = Buffer.alloc(12 + 16 * tables.length);
  head.writeUInt32BE(bytes.readUInt32BE(4), 0);
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

function padTo4(data: Buffer): Buffer {
  return Buffer.concat([data, Buffer.alloc((4 - (data.length % 4)) % 4)]);
}

function checksum(padded: Buffer): number {
  let sum = 0;
  for (let i = 0; i < padded.length; i += 4) sum = (sum + padded.readUInt32BE(i)) >>> 0;
  return sum;
}
