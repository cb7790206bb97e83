import { crc32, deflateSync } from 'node:zlib';

/** Returns a white grayscale PNG as a data URL, a thousandth of its decoded size. */
export function whitePng(width: number, height: number): string {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.writeUInt8(8, 8); // bit depth; the rest of the header is 0: grayscale, deflated, not interlaced
  const row = Buffer.alloc(1 + width, 0xff);
  row[0] = 0; // no filter
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
