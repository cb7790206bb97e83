/** Longest side of what is searched, px: a bar of a usual label is three of them wide, and a tablet reads it in a tenth of a second. */
export const SEARCHED = 1024;

interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Returns the pixels of a picture or video, at most `most` px long; null where it is empty. A turned one stands on its side: the bars of a
 * linear code are looked for along rows.
 */
export function pixelsOf(
  source: CanvasImageSource,
  { width, height }: Size,
  isTurned: boolean,
  most: number,
): ImageData | null {
  const scale = Math.min(1, most / Math.max(width, height));
  const [across, down] = [Math.round(width * scale), Math.round(height * scale)];
  if (across < 1 || down < 1) return null;
  const canvas = isTurned ? new OffscreenCanvas(down, across) : new OffscreenCanvas(across, down);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) return null;
  if (isTurned) context.setTransform(0, 1, -1, 0, down, 0);
  context.drawImage(source, 0, 0, across, down);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}
