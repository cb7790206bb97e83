import { decodeBarCode } from './decode.ts';
import { pixelsOf, SEARCHED } from './pixels.ts';

/** Sizes that a picture is searched in, px: a narrow code needs the larger one, a blurred one the smaller. */
const SIZES = [2 * SEARCHED, SEARCHED, SEARCHED / 2] as const;

/** The label may lie anywhere in it. */
const BANDS = 5;

/** Returns the text of a bar code or QR code in a picture; empty where none is found or the picture cannot be read. */
export async function readBarCode(file: Blob): Promise<string> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return '';
  try {
    for (const size of SIZES) {
      for (const isTurned of [false, true]) {
        const pixels = pixelsOf(picture, picture, isTurned, size);
        const text = pixels && decodeBarCode(pixels, BANDS);
        if (text) return text;
      }
    }
    return '';
  } finally {
    picture.close();
  }
}
