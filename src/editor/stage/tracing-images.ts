import { create } from 'zustand';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { isShowable } from '../../drawing/picture-head.ts';
import { SHEET_THEME } from '../../theme/tokens.ts';

/**
 * Decoded pictures by their data address; null for one that cannot be decoded. Decoding takes a tenth of a second, so it is asynchronous
 * and done once.
 */
export const useTracingImages = create<{ readonly ready: ReadonlyMap<string, ImageBitmap | null> }>()(() => ({
  ready: new Map(),
}));

/** Most pictures that are kept: those of the levels in use, and one that undo may restore. Each takes up to 35 MB, with its negative. */
const MOST = 4;
const asked = new Set<string>();

/** Returns the decoded picture; null if it cannot be decoded, or while it is being decoded, after which the store is updated. */
export function tracingImageOf(image: string): ImageBitmap | null {
  const { ready } = useTracingImages.getState();
  if (!ready.has(image) && !asked.has(image)) {
    asked.add(image);
    void decode(image);
  }
  return ready.get(image) ?? null;
}

async function decode(image: string): Promise<void> {
  const picture = await read(image).catch(() => null);
  asked.delete(image);
  const kept = [...useTracingImages.getState().ready].slice(-MOST + 1);
  useTracingImages.setState({ ready: new Map([...kept, [image, picture]]) });
}

async function read(image: string): Promise<ImageBitmap> {
  if (!isShowable(image)) throw new Error('a picture that is too large to be shown');
  return createImageBitmap(await (await fetch(image)).blob());
}

/** Returns the negative of a picture, for a dark sheet. */
export const negativeOf = memoize((bitmap: ImageBitmap): ImageBitmap => {
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, height);
  const ctx = canvas.getContext('2d');
  if (!ctx) return bitmap;
  // White, the color of the sheet in a light theme.
  ctx.fillStyle = SHEET_THEME.paper;
  ctx.fillRect(0, 0, width, height);
  ctx.drawImage(bitmap, 0, 0);
  // White minus the picture, channel by channel.
  ctx.globalCompositeOperation = 'difference';
  ctx.fillRect(0, 0, width, height);
  return canvas.transferToImageBitmap();
});
