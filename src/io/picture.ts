/** Photos and scans on their way into a plan: read, turned upright, drawn down to a size that a plan file can carry. */
import { SHEET_THEME } from '../design/tokens.ts';
import { HEAD_BYTES, type OtherKind, type PictureKind, pictureHead } from './picture-head.ts';
import { megabytes } from './picture-size.ts';

export interface Picture {
  /** As a data address. */
  readonly image: string;
  readonly name: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** How large it was, what was done to it, and what it takes of the plan, in words. */
  readonly remark: string;
}
export type PictureRead =
  | { readonly ok: true; readonly picture: Picture }
  | { readonly ok: false; readonly reason: string };

/** A sketch is legible at this many pixels along its longer side, and a plan with it stays below a few MB. */
const LONGEST_SIDE = 2400;
const LARGEST_BYTES = 60_000_000;
/** Four bytes to a pixel while it is read: what a tablet can spare for a moment. */
const MOST_PIXELS = 120_000_000;
/** A picture of few bytes is kept as it is: a scan of lines is smaller as PNG than as a photo. */
const KEPT_BYTES = 700_000;

/** Reads a PNG, JPEG or WebP, and a HEIC where the browser can. Refused in words when it is none, is broken, moves, or is too large. */
export async function readPicture(file: File): Promise<PictureRead> {
  const name = file.name || 'The picture';
  const refused = (reason: string): PictureRead => ({ ok: false, reason: `${name} ${reason}` });
  if (file.size > LARGEST_BYTES) {
    return refused(`has ${Math.round(file.size / 1e6)} MB. Bring in a picture of less than 60 MB.`);
  }
  const head = pictureHead(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));
  if (typeof head === 'string' && head !== 'heic') return refused(NOT_A_PICTURE[head]);
  if (typeof head !== 'string') {
    const { size, moving } = head;
    if (moving)
      return refused('moves: it holds several pictures in turn. Save one of them as PNG or JPEG and bring that in.');
    if (size && size.width * size.height > MOST_PIXELS) {
      const words = `${size.width} by ${size.height} pixels`;
      return refused(`is too large, ${words}. Make it smaller, 2400 pixels along its longer side are enough.`);
    }
  }
  let bitmap: ImageBitmap;
  try {
    // A phone notes which side is up; the picture is turned to it here, once.
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return refused(
      head === 'heic' ? HEIC : 'could not be read: the file is damaged. Take the photo again or bring in another copy.',
    );
  }
  try {
    return { ok: true, picture: await stored(file, head === 'heic' ? null : head.kind, bitmap) };
  } catch {
    return refused(`is too large for this browser, ${bitmap.width} by ${bitmap.height} pixels. Make it smaller first.`);
  } finally {
    bitmap.close();
  }
}

const HEIC =
  'is a HEIC photo, which this browser cannot read. Save it as JPEG on the phone, or take a screenshot of it, and bring that in.';
const NOT_A_PICTURE: Readonly<Record<Exclude<OtherKind, 'heic'>, string>> = {
  pdf: 'is a PDF. Save the page as a picture, or take a screenshot of it, and bring that in.',
  gif: 'is a GIF. Save it as PNG or JPEG and bring that in.',
  unknown: 'is not a PNG, JPEG or WebP picture. Save it as one of these and bring that in.',
};

async function stored(file: File, kind: PictureKind | null, bitmap: ImageBitmap): Promise<Picture> {
  const share = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [
    Math.max(1, Math.round(bitmap.width * share)),
    Math.max(1, Math.round(bitmap.height * share)),
  ];
  // Drawn anew unless small: that leaves behind what a phone writes beside a photo, such as where it was taken.
  const asIs = share === 1 && kind === 'image/png' && file.size <= KEPT_BYTES;
  const blob = asIs ? new Blob([file], { type: kind }) : await drawnDown(bitmap, width, height);
  const image = await dataAddress(blob);
  const from = share < 1 ? `Drawn down from ${bitmap.width} by ${bitmap.height} to ${width} by ${height} pixels, ` : '';
  const takes = `${megabytes(image.length)} of the plan.`;
  return { image, name: file.name, width, height, remark: from ? from + takes : `It takes ${takes}` };
}

async function drawnDown(bitmap: ImageBitmap, width: number, height: number): Promise<Blob> {
  const canvas = new OffscreenCanvas(width, height);
  const ctx = canvas.getContext('2d');
  if (!ctx) throw new Error('this browser draws no canvas');
  // A photo has no glass: what was see-through is paper.
  ctx.fillStyle = SHEET_THEME.paper;
  ctx.fillRect(0, 0, width, height);
  ctx.imageSmoothingQuality = 'high';
  ctx.drawImage(bitmap, 0, 0, width, height);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.82 });
}

function dataAddress(blob: Blob): Promise<string> {
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(reader.error);
    reader.readAsDataURL(blob);
  });
}
