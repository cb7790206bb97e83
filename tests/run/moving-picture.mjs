// Encodes screenshots of one size as an animated picture (GIF89a).
import gifenc from 'gifenc';

const { applyPalette, GIFEncoder, quantize } = gifenc;

/**
 * @typedef {object} Frame
 * @property {Buffer} png
 * @property {number} delay how long it is shown, ms
 */

/**
 * Returns red, green, blue and alpha of each pixel of a PNG, decoded by the page's browser.
 * @param {import('playwright-core').Page} page
 * @param {Buffer} png
 */
async function decode(page, png) {
  const { width, height, base64 } = await page.evaluate(async (data) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob());
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
    context?.drawImage(image, 0, 0);
    const bytes = context?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
    let text = '';
    for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return { width: image.width, height: image.height, base64: btoa(text) };
  }, png.toString('base64'));
  return { width, height, pixels: new Uint8Array(Buffer.from(base64, 'base64')) };
}

/**
 * Returns an endless animation of the frames. All frames share a palette, and pixels that did not change since the previous frame are
 * transparent, so that they take almost no bytes.
 * @param {import('playwright-core').Page} page whose browser decodes the frames
 * @param {readonly Frame[]} frames
 * @returns {Promise<Uint8Array>}
 */
export async function movingPicture(page, frames) {
  const images = [];
  for (const { png } of frames) images.push(await decode(page, png));
  const [first] = images;
  const last = images.at(-1);
  if (!first || !last) throw new Error('A moving picture has a frame at least.');
  const both = new Uint8Array(first.pixels.length + last.pixels.length);
  both.set(first.pixels);
  both.set(last.pixels, first.pixels.length);
  const palette = quantize(both, 47);
  const transparent = palette.length;
  palette.push([255, 0, 255]);
  const gif = GIFEncoder();
  /** @type {Uint8Array | undefined} */
  let before;
  images.forEach(({ pixels, width, height }, at) => {
    const index = applyPalette(pixels, palette.slice(0, transparent));
    const changed = before ? index.map((color, i) => (color === before?.[i] ? transparent : color)) : index;
    gif.writeFrame(changed, width, height, {
      palette: before ? undefined : palette,
      transparent: before !== undefined,
      transparentIndex: transparent,
      delay: frames[at]?.delay ?? 0,
      dispose: 1,
    });
    before = index;
  });
  gif.finish();
  return gif.bytes();
}
