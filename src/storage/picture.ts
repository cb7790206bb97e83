/** Import of photos and scans: they are read, turned upright and scaled down to a size that fits a plan file. */

import { HEAD_BYTES, type OtherKind, type PictureKind, pictureHead } from '../drawing/picture-head.ts';
import { SHEET_THEME } from '../theme/tokens.ts';
import { megabytes } from './picture-file.ts';

interface Picture {
  /** Data URL. */
  readonly image: string;
  readonly name: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Its original size, what was done to it, and its size in the plan, in words. */
  readonly remark: string;
}
export type PictureRead =
  | { readonly ok: true; readonly picture: Picture }
  | { readonly ok: false; readonly reason: string };

/** The size that a picture is scaled down to. */
export interface PictureFit {
  /** Maximum length of the longer side, px. */
  readonly longestSide: number;
  /** Quality of the JPEG, 0 to 1. */
  readonly quality: number;
  /** A PNG up to this size that is not scaled down stays a PNG: a scan of lines is smaller as PNG than as JPEG. */
  readonly keepBelowBytes: number;
}
/** A sketch to draw over: every line stays legible, and the plan stays below a few MB. */
const SKETCH: PictureFit = { longestSide: 2400, quality: 0.82, keepBelowBytes: 700_000 };
/** A photo in the log: the detector's place and its label stay legible, and ten photos take about 2 MB of the plan. */
export const LOG_PHOTO: PictureFit = { longestSide: 1280, quality: 0.75, keepBelowBytes: 100_000 };
const LARGEST_BYTES = 60_000_000;
/** Decoding takes 4 bytes per pixel, so at most 480 MB: about what a tablet can spare for a moment. */
const MOST_PIXELS = 120_000_000;

/**
 * Reads a PNG, JPEG or WebP, and a HEIC if the browser can. Returns the reason in words if the file is of another kind, damaged, animated or
 * too large.
 */
export async function readPicture(file: File, fit: PictureFit = SKETCH): Promise<PictureRead> {
  const name = file.name || 'The picture';
  const refused = (reason: string): PictureRead => ({ ok: false, reason: `${name} ${reason}` });
  if (file.size > LARGEST_BYTES) {
    return refused(`has ${Math.round(file.size / 1e6)} MB. Import a picture of less than 60 MB.`);
  }
  const head = pictureHead(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));
  if (typeof head === 'string' && head !== 'heic') return refused(NOT_A_PICTURE[head]);
  if (typeof head !== 'string') {
    const { size, moving } = head;
    if (moving)
      return refused('moves: it holds several pictures in turn. Save one of them as PNG or JPEG and import that.');
    if (size && size.width * size.height > MOST_PIXELS) {
      const words = `${size.width} by ${size.height} pixels`;
      return refused(
        `is too large, ${words}. Make it smaller, ${fit.longestSide} pixels along its longer side are enough.`,
      );
    }
  }
  let bitmap: ImageBitmap;
  try {
    // A phone stores the orientation as metadata; the picture is turned upright here, once.
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return refused(
      head === 'heic' ? HEIC : 'could not be read: the file is damaged. Take the photo again or import another copy.',
    );
  }
  try {
    return { ok: true, picture: await stored(file, head === 'heic' ? null : head.kind, bitmap, fit) };
  } catch {
    return refused(`is too large for this browser, ${bitmap.width} by ${bitmap.height} pixels. Make it smaller first.`);
  } finally {
    bitmap.close();
  }
}

const HEIC =
  'is a HEIC photo, which this browser cannot read. Save it as JPEG on the phone, or take a screenshot of it, and import that.';
const NOT_A_PICTURE: Readonly<Record<Exclude<OtherKind, 'heic'>, string>> = {
  pdf: 'is a PDF. Save the page as a picture, or take a screenshot of it, and import that.',
  gif: 'is a GIF. Save it as PNG or JPEG and import that.',
  unknown: 'is not a PNG, JPEG or WebP picture. Save it as one of these and import that.',
};

async function stored(
  file: File,
  kind: PictureKind | null,
  bitmap: ImageBitmap,
  { longestSide, quality, keepBelowBytes }: PictureFit,
): Promise<Picture> {
  const share = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [
    Math.max(1, Math.round(bitmap.width * share)),
    Math.max(1, Math.round(bitmap.height * share)),
  ];
  // Always encoded again, at any size: this removes metadata such as the location where a photo was taken.
  const staysPng = share === 1 && kind === 'image/png' && file.size <= keepBelowBytes;
  const blob = await drawnDown(
    bitmap,
    width,
    height,
    staysPng ? { type: 'image/png' } : { type: 'image/jpeg', quality },
  );
  const image = await dataAddress(blob);
  const from = share < 1 ? `Reduced from ${bitmap.width} by ${bitmap.height} to ${width} by ${height} pixels, ` : '';
  const takes = `${megabytes(image.length)} of the plan.`;
  return { image, name: file.name, width, height, remark: from ? from + takes : `It takes ${takes}` };
}

async function drawnDown(bitmap: ImageBitmap, width: number, height: number, form: ImageEncodeOptions): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  const ctx = canvas.getContext('2d');
  if (!ctx) throw new Error('this browser draws no canvas');
  // JPEG has no transparency: transparent pixels become white.
  if (form.type === 'image/jpeg') {
    ctx.fillStyle = SHEET_THEME.paper;
    ctx.fillRect(0, 0, width, height);
  }
  ctx.imageSmoothingQuality = 'high';
  ctx.drawImage(bitmap, 0, 0, width, height);
  return canvas.convertToBlob(form);
}

function dataAddress(blob: Blob): Promise<string> {
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(reader.error);
    reader.readAsDataURL(blob);
  });
}
