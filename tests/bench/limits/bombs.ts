import { crc32, deflateSync } from 'node:zlib';

/** Returns a white PNG of one gray level to a pixel, as a data address: a thousandth of what it takes once it is decoded. */
export function whitePng(width: number, height: number): string {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.writeUInt8(8, 8); // bits to a level; the rest of the head is 0: gray, deflated, not interlaced
  const row = Buffer.alloc(1 + width, 0xff);
  row[0] = 0; // as it is, without a filter
  const data = deflateSync(Buffer.concat(Array.from({ length: height }, () => row)), { level: 9 });
  const file = Buffer.concat([SIGNATURE, chunk('IHDR', head), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))]);
  return `data:image/png;base64,${file.toString('base64')}`;
}

/** Portable Network Graphics (W3C, third edition), 5.2 and 5.3. */
const SIGNATURE = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body) >>> 0);
  return Buffer.concat([length, body, check]);
}
