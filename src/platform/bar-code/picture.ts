import { decodeBarCode } from './decode.ts';
import { pixelsOf, SEARCHED } from './pixels.ts';

/** Sizes at which a picture is searched, px: a narrow code needs a large size, a blurred one a small size. */
const SIZES = [2 * SEARCHED, SEARCHED, SEARCHED / 2] as const;

/** Horizontal bands that are searched: the label may be anywhere in the picture. */
const BANDS = 5;

/** Returns the text of a bar code or QR code in a picture file; empty if none is found or the file cannot be read. */
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
