import { create } from 'zustand';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { isShowable } from '../../drawing/picture-head.ts';
import { SHEET_THEME } from '../../theme/tokens.ts';

/** Pictures by their data address; null for one that no browser reads. Decoding takes a tenth of a second: done once, beside the page's work. */
export const useTracingImages = create<{ readonly ready: ReadonlyMap<string, ImageBitmap | null> }>()(() => ({
  ready: new Map(),
}));

/** So many are kept: the levels that one goes between, and one that undo may bring back. Each takes up to 35 MB, negative included. */
const MOST = 4;
const asked = new Set<string>();

/** The picture, or null while it is being read; it then comes by itself. */
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

/** The same in negative, for a dark sheet. */
export const negativeOf = memoize((bitmap: ImageBitmap): ImageBitmap => {
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, height);
  const ctx = canvas.getContext('2d');
  if (!ctx) return bitmap;
  // White: the sheet of a light theme.
  ctx.fillStyle = SHEET_THEME.paper;
  ctx.fillRect(0, 0, width, height);
  ctx.drawImage(bitmap, 0, 0);
  // White less the picture, channel by channel.
  ctx.globalCompositeOperation = 'difference';
  ctx.fillRect(0, 0, width, height);
  return canvas.transferToImageBitmap();
});
