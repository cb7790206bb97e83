/** Longest side of a searched frame, px: a bar of a usual label is then 3 px wide, and a tablet searches a frame in 0.1 s. */
export const SEARCHED = 1024;

interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Returns the pixels of a picture or video, scaled down to a longest side of `most` px; null if it is empty. `isTurned` rotates it by 90°,
 * because linear codes are searched along rows only.
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
