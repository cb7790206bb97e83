import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { bundleScript } from './bundle-script.ts';
import { openPage } from './harness.ts';

/** Put into the metadata of each picture, in place of the location where it was taken. */
const SECRET = 'GPS-41.2033-N-75.8812-W';

interface Stored {
  readonly had: boolean;
  readonly ok: boolean;
  readonly image: string;
  readonly width: number;
}

/** Draws a picture, puts the secret into its metadata and imports it, both as sketch and as photo of the log. */
async function imported(page: Page, type: string, width: number, isPhoto: boolean): Promise<Stored> {
  return page.evaluate(
    async ({ type, width, isPhoto, secret }) => {
      const canvas = new OffscreenCanvas(width, Math.round(width / 2));
      const context = canvas.getContext('2d');
      if (!context) throw new Error('This browser draws no canvas.');
      context.fillRect(0, 0, width / 2, width / 4);
      const plain = new Uint8Array(await (await canvas.convertToBlob({ type })).arrayBuffer());
      const words = new TextEncoder().encode(secret);
      const big = (value: number, count: number) =>
        Array.from({ length: count }, (_, i) => (value >> (8 * (count - 1 - i))) & 255);
      const little = (value: number) => big(value, 4).reverse();
      const ascii = (text: string) => [...text].map((sign) => sign.charCodeAt(0));
      // JPEG: an APP1 segment after the start. PNG: a tEXt chunk after the head. WebP: an EXIF chunk at the end.
      const made: Readonly<Record<string, () => readonly number[]>> = {
        'image/jpeg': () => [
          ...plain.slice(0, 2),
          0xff,
          0xe1,
          ...big(words.length + 8, 2),
          ...ascii('Exif\0\0'),
          ...words,
          ...plain.slice(2),
        ],
        'image/png': () => [
          ...plain.slice(0, 33),
          ...big(words.length + 8, 4),
          ...ascii('tEXtComment\0').slice(0, 4),
          ...ascii('Comment\0'),
          ...words,
          ...crcOf([...ascii('tEXt'), ...ascii('Comment\0'), ...words]),
          ...plain.slice(33),
        ],
        'image/webp': () => {
          const chunk = [...ascii('EXIF'), ...little(words.length), ...words, ...(words.length % 2 ? [0] : [])];
          const all = [...plain, ...chunk];
          return [...all.slice(0, 4), ...little(all.length - 8), ...all.slice(8)];
        },
      };
      const bytes = made[type]?.();
      function crcOf(part: readonly number[]): readonly number[] {
        let crc = 0xffffffff;
        for (const byte of part) {
          crc ^= byte;
          for (let k = 0; k < 8; k++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
        }
        return big(~crc, 4);
      }
      const file = new File([Uint8Array.from(bytes ?? [])], 'photo', { type });
      const { Pictures } = window as unknown as {
        Pictures: {
          LOG_PHOTO: object;
          readPicture: (
            file: File,
            fit?: object,
          ) => Promise<{ ok: boolean; picture: { image: string; width: number } }>;
        };
      };
      const read = await Pictures.readPicture(file, isPhoto ? Pictures.LOG_PHOTO : undefined);
      return {
        had: (await file.text()).includes(secret),
        ok: read.ok,
        image: read.ok ? atob(read.picture.image.split(',')[1] ?? '') : JSON.stringify(read),
        width: read.ok ? read.picture.width : 0,
      };
    },
    { type, width, isPhoto, secret: SECRET },
  );
}

describe('a picture that is imported', () => {
  let script = '';
  beforeAll(async () => {
    script = await bundleScript('src/storage/picture.ts', 'Pictures');
  });

  const CASES = ['image/jpeg', 'image/png', 'image/webp'].flatMap((type) =>
    [40, 900, 3000].flatMap((width) => [true, false].map((isPhoto) => [type, width, isPhoto] as const)),
  );

  it('loses its metadata, whatever its kind and size: where a photo was taken stays with who took it', async () => {
    const { page } = await openPage();
    // A page without the policy of the app's page.
    await page.goto(inject('emptyUrl'));
    await page.addScriptTag({ content: script });
    for (const [type, width, isPhoto] of CASES) {
      const { had, ok, image, width: stored } = await imported(page, type, width, isPhoto);
      expect({ type, width, had, ok }).toEqual({ type, width, had: true, ok: true });
      expect(image).not.toContain(SECRET);
      expect(image).not.toMatch(/Exif|tEXt|EXIF/);
      expect(stored).toBe(Math.min(width, isPhoto ? 1280 : 2400));
    }
  });
});
