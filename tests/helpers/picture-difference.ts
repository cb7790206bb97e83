/** How much two pictures of the same page differ. */

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Four bytes per pixel, in the same order in both pictures. */
  readonly data: Uint8Array;
}

/** Difference of a channel, of 255, from which colors are different: edges of letters and thin lines are smoothed in different ways. */
const NOTICED = 64;

/** Returns the share of pixels, 0 to 1, that differ from all pixels of the other picture at the same place and one pixel around it. */
export function noticedDifference(a: Pixels, b: Pixels): number {
  if (a.width !== b.width || a.height !== b.height) return 1;
  let noticed = 0;
  const [ours, theirs] = [wholePixels(a), wholePixels(b)];
  for (let y = 0; y < a.height; y++)
    for (let x = 0; x < a.width; x++) {
      const at = y * a.width + x;
      // Most pixels of a page are identical.
      if (ours[at] !== theirs[at] && (!isAlike(a, b, x, y) || !isAlike(b, a, x, y))) noticed++;
    }
  return noticed / (a.width * a.height);
}

/** The four bytes of each pixel as one number. */
function wholePixels({ data }: Pixels): Uint32Array {
  const { buffer, byteOffset, length } = data.byteOffset % 4 === 0 ? data : new Uint8Array(data);
  return new Uint32Array(buffer, byteOffset, length / 4);
}

function isAlike(one: Pixels, other: Pixels, x: number, y: number): boolean {
  const at = 4 * (y * one.width + x);
  if (isNear(one.data, at, other.data, at)) return true;
  for (let v = Math.max(0, y - 1); v <= Math.min(one.height - 1, y + 1); v++)
    for (let u = Math.max(0, x - 1); u <= Math.min(one.width - 1, x + 1); u++)
      if (isNear(one.data, at, other.data, 4 * (v * one.width + u))) return true;
  return false;
}

function isNear(a: Uint8Array, i: number, b: Uint8Array, j: number): boolean {
  for (let channel = 0; channel < 3; channel++)
    if (Math.abs((a[i + channel] ?? 0) - (b[j + channel] ?? 0)) > NOTICED) return false;
  return true;
}
