/** Photos and scans on their way into a plan: read, turned upright, drawn down to a size that a plan file can carry. */
import { SHEET_THEME } from '../design/tokens.ts';

export interface Picture {
  /** As a data address. */
  readonly image: string;
  readonly name: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** What was done to it, in words; empty for nothing. */
  readonly remark: string;
}
export type PictureRead =
  | { readonly ok: true; readonly picture: Picture }
  | { readonly ok: false; readonly reason: string };

/** A sketch is legible at this many pixels along its longer side, and a plan with it stays below a few MB. */
const LONGEST_SIDE = 2400;
const LARGEST_BYTES = 60_000_000;
/** A picture of few bytes is kept as it is: a scan of lines is smaller as PNG than as a photo. */
const KEPT_BYTES = 700_000;
const KINDS = ['image/png', 'image/jpeg', 'image/webp'] as const;

/** Reads a PNG, JPEG or WebP. Refused in words when it is none, is broken, or is too large. */
export async function readPicture(file: File): Promise<PictureRead> {
  const name = file.name || 'picture';
  const refused = (reason: string): PictureRead => ({ ok: false, reason });
  if (/\.hei[cf]$/i.test(name) || /hei[cf]/.test(file.type)) {
    return refused(
      `${name} is a HEIC photo, which browsers do not read. Save it as JPEG on the phone and bring that in.`,
    );
  }
  if (file.size > LARGEST_BYTES) {
    return refused(`${name} has ${Math.round(file.size / 1e6)} MB. Bring in a picture of less than 60 MB.`);
  }
  const kind = await kindOf(file);
  if (!kind) return refused(`${name} is not a PNG, JPEG or WebP picture. Save it as one of these and bring that in.`);
  let bitmap: ImageBitmap;
  try {
    // A phone notes which side is up; the picture is turned to it here, once.
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return refused(`${name} could not be read: the file is damaged. Take the photo again or bring in another copy.`);
  }
  try {
    return { ok: true, picture: await stored(file, kind, bitmap, name) };
  } catch {
    return refused(
      `${name} is too large for this browser: ${bitmap.width} by ${bitmap.height} pixels. Make it smaller first.`,
    );
  } finally {
    bitmap.close();
  }
}

/** By its first bytes: names and types of files are often wrong. */
async function kindOf(file: File): Promise<(typeof KINDS)[number] | null> {
  const head = new Uint8Array(await file.slice(0, 12).arrayBuffer());
  const text = String.fromCharCode(...head);
  if (text.startsWith('\x89PNG')) return 'image/png';
  if (head[0] === 0xff && head[1] === 0xd8) return 'image/jpeg';
  return text.startsWith('RIFF') && text.slice(8) === 'WEBP' ? 'image/webp' : null;
}

async function stored(file: File, kind: string, bitmap: ImageBitmap, name: string): Promise<Picture> {
  const share = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [
    Math.max(1, Math.round(bitmap.width * share)),
    Math.max(1, Math.round(bitmap.height * share)),
  ];
  // Drawn anew unless small: that leaves behind what a phone writes beside a photo, such as where it was taken.
  const asIs = share === 1 && kind === 'image/png' && file.size <= KEPT_BYTES;
  const blob = asIs ? new Blob([file], { type: kind }) : await drawnDown(bitmap, width, height);
  const remark =
    share < 1 ? `Drawn down from ${bitmap.width} by ${bitmap.height} to ${width} by ${height} pixels.` : '';
  return { image: await dataAddress(blob), name, width, height, remark };
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
