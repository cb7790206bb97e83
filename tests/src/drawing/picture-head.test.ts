import { describe, expect, it } from 'vitest';
import { isShowable, pictureHead } from '../../../src/drawing/picture-head.ts';

const bytes = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));
const PNG = '\x89PNG\r\n\x1a\n';
const IHDR = '\0\0\0\rIHDR\0\0\x03\x20\0\0\x02\x58\x08\x02\0\0\0....';
const RIFF = 'RIFF....WEBP';

describe('pictureHead(bytes)', () => {
  it.each([
    ['a PNG', `${PNG + IHDR}\0\0\0\0IDAT`, { kind: 'image/png', size: { width: 800, height: 600 }, moving: false }],
    [
      'a PNG that moves (acTL before the picture)',
      `${PNG}${IHDR}\0\0\0\x08acTL12345678....\0\0\0\0IDAT`,
      { kind: 'image/png', size: { width: 800, height: 600 }, moving: true },
    ],
    [
      'a JPEG with notes and tables before its frame',
      '\xff\xd8\xff\xe1\0\x06Exif\xff\xc4\0\x04..\xff\xff\xc0\0\x11\x08\x02\x58\x03\x20\x03',
      { kind: 'image/jpeg', size: { width: 800, height: 600 }, moving: false },
    ],
    ['a JPEG that is torn', '\xff\xd8\xff\xe0', { kind: 'image/jpeg', size: null, moving: false }],
    [
      'an extended WebP that moves: width and height less one in three bytes',
      `${RIFF}VP8X\x0a\0\0\0\x02\0\0\0\x1f\x03\0\x57\x02\0`,
      { kind: 'image/webp', size: { width: 800, height: 600 }, moving: true },
    ],
    [
      'a lossless WebP: 14 bits each, less one',
      `${RIFF}VP8L....\x2f\x1f\xc3\x95\0.....`,
      { kind: 'image/webp', size: { width: 800, height: 600 }, moving: false },
    ],
    [
      'a lossy WebP',
      `${RIFF}VP8 .......\x9d\x01\x2a\x20\x03\x58\x02`,
      { kind: 'image/webp', size: { width: 800, height: 600 }, moving: false },
    ],
    ['a photo of a phone', '\0\0\0\x18ftypheic....', 'heic'],
    ['a PDF', '%PDF-1.7', 'pdf'],
    ['a GIF', 'GIF89a', 'gif'],
    ['a text', 'notes', 'unknown'],
    ['nothing', '', 'unknown'],
  ])('%s', (_, text, head) => {
    expect(pictureHead(bytes(text))).toEqual(head);
  });

  it('does not trip over a head that is cut off anywhere', () => {
    for (const whole of [
      `${PNG}${IHDR}\0\0\0\x08acTL12345678`,
      `${RIFF}VP8X\x0a\0\0\0\x02\0\0\0\x1f\x03\0\x57\x02\0`,
    ]) {
      for (let end = 0; end < whole.length; end++) expect(() => pictureHead(bytes(whole.slice(0, end)))).not.toThrow();
    }
  });
});

describe('isShowable(address)', () => {
  const address = (text: string) => `data:image/png;base64,${btoa(text)}`;
  const sized = (size: string) => address(`${PNG}\0\0\0\rIHDR${size}\x08\x02\0\0\0....\0\0\0\0IDAT`);
  it('is true for a picture of the usual size', () => {
    expect(isShowable(sized('\0\0\x03\x20\0\0\x02\x58'))).toBe(true);
  });

  it.each([
    ['one of 30,000 by 30,000 pixels in a few bytes', sized('\0\0\x75\x30\0\0\x75\x30')],
    ['what is no picture', address('<svg onload="alert(1)"/>')],
    ['what is no base64', 'data:image/png;base64,%%%'],
    ['a picture whose size is not known', address('\xff\xd8\xff\xe0')],
  ])('is false for %s', (_, text) => {
    expect(isShowable(text)).toBe(false);
  });
});
