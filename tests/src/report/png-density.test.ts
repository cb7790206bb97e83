import { crc32, deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { withDensity } from '../../../src/report/png-density.ts';

/** ISO/IEC 15948, 5.3: length, kind, content, check. */
function chunk(kind: string, content: readonly number[] | Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), Buffer.from(content)]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(content.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}

const START = [Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk('IHDR', [0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0])];
const END = [chunk('IDAT', deflateSync(Buffer.from([0, 255]))), chunk('IEND', [])];

describe('the size of a PNG on paper', () => {
  it('stands after the header, and the rest stays byte by byte', () => {
    // 200 / 0.0254 m = 7874.02 = 0x1ec2.
    const density = chunk('pHYs', [0, 0, 0x1e, 0xc2, 0, 0, 0x1e, 0xc2, 1]);
    const file = withDensity(Buffer.concat([...START, ...END]), 200);
    expect(Buffer.from(file).equals(Buffer.concat([...START, density, ...END]))).toBe(true);
  });

  it('takes the place of one that is there: a file may hold one only', () => {
    const plain = Buffer.concat([...START, ...END]);
    const screen = chunk('pHYs', [0, 0, 0x0b, 0x13, 0, 0, 0x0b, 0x13, 1]);
    const file = withDensity(Buffer.concat([...START, chunk('sRGB', [0]), screen, ...END]), 200);
    const expected = withDensity(Buffer.concat([...START, chunk('sRGB', [0]), ...END]), 200);
    expect(Buffer.from(file).equals(Buffer.from(expected))).toBe(true);
    expect(file.length).toBe(plain.length + 21 + 13);
  });
});
