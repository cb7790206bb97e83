/** Reads the kind of a picture file from its first bytes: names and types of files are often wrong. */

export type PictureKind = 'image/png' | 'image/jpeg' | 'image/webp';

/** Files that people choose as a picture and that a plan cannot hold. */
export type OtherKind = 'heic' | 'pdf' | 'gif' | 'unknown';

export interface PictureHead {
  readonly kind: PictureKind;
  /** Pixels as stored, before the picture is turned upright; null if the head is damaged or longer than the bytes that were read. */
  readonly size: { readonly width: number; readonly height: number } | null;
  /** Whether it is an animation. */
  readonly moving: boolean;
}

/** Bytes that hold the head of a photo with the camera's notes and a preview before it. */
export const HEAD_BYTES = 400_000;

/** Returns the head of a PNG, JPEG or WebP file; for any other file its kind, as far as it is known. Never throws. */
export function pictureHead(bytes: Uint8Array): PictureHead | OtherKind {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (signs(bytes, 0, 4) === '\x89PNG') return png(bytes, view);
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return { kind: 'image/jpeg', size: jpegSize(view), moving: false };
  if (signs(bytes, 0, 4) === 'RIFF' && signs(bytes, 8, 4) === 'WEBP') return webp(bytes, view);
  if (signs(bytes, 4, 4) === 'ftyp' && /^(?:hei|hev|mif1|msf1)/.test(signs(bytes, 8, 4))) return 'heic';
  if (signs(bytes, 0, 4) === '%PDF') return 'pdf';
  return signs(bytes, 0, 4) === 'GIF8' ? 'gif' : 'unknown';
}

/**
 * Pixels of the largest picture of a plan that is shown or printed: 160 MB while it is decoded. Pictures that the app stores are far
 * smaller.
 */
const MOST_SHOWN_PIXELS = 40_000_000;
/** Results for the latest pictures by data address: the same ones are shown many times. */
const showable = new Map<string, boolean>();
const MOST_KNOWN = 50;

/**
 * Returns whether a picture of a plan may be decoded: a picture of a few kilobytes can take gigabytes of memory. Only its head is read.
 * @param address a data address
 */
export function isShowable(address: string): boolean {
  let known = showable.get(address);
  if (known === undefined) {
    known = hasBelievableHead(address);
    if (showable.size >= MOST_KNOWN) showable.clear();
    showable.set(address, known);
  }
  return known;
}

function hasBelievableHead(address: string): boolean {
  const start = address.indexOf(',') + 1;
  // Base64: four characters hold three bytes.
  const text = address.slice(start, start + 4 * Math.ceil(HEAD_BYTES / 3));
  try {
    const head = pictureHead(Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0)));
    if (typeof head === 'string' || head.moving || !head.size) return false;
    return head.size.width * head.size.height <= MOST_SHOWN_PIXELS;
  } catch {
    return false;
  }
}

const signs = (bytes: Uint8Array, from: number, count: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + count));

/** Portable Network Graphics (W3C, third edition): IHDR first; an acTL chunk before the picture says that it moves. */
function png(bytes: Uint8Array, view: DataView): PictureHead {
  const size = view.byteLength >= 24 ? { width: view.getUint32(16), height: view.getUint32(20) } : null;
  let moving = false;
  for (let at = 8; at + 8 <= view.byteLength && signs(bytes, at + 4, 4) !== 'IDAT'; at += 12 + view.getUint32(at)) {
    moving ||= signs(bytes, at + 4, 4) === 'acTL';
  }
  return { kind: 'image/png', size, moving };
}

/** JPEG (ITU-T T.81, annex B): markers with lengths, until a frame header (SOF) says how large the picture is. */
function jpegSize(view: DataView): PictureHead['size'] {
  let at = 2;
  while (at + 9 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    // C0 to CF are frame headers, except DHT (C4), JPG (C8) and DAC (CC).
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    // A marker may have any number of FF before it.
    at += marker === 0xff ? 1 : 2 + view.getUint16(at + 2);
  }
  return null;
}

/** WebP (RFC 9649): simple lossy, simple lossless, or extended with flags and the size of the whole. */
function webp(bytes: Uint8Array, view: DataView): PictureHead {
  const kind = 'image/webp';
  if (view.byteLength < 30) return { kind, size: null, moving: false };
  const form = signs(bytes, 12, 4);
  if (form === 'VP8X') {
    const three = (at: number) => view.getUint16(at, true) + view.getUint8(at + 2) * 65_536 + 1;
    return { kind, size: { width: three(24), height: three(27) }, moving: (view.getUint8(20) & 2) !== 0 };
  }
  if (form === 'VP8L') {
    const packed = view.getUint32(21, true);
    return { kind, size: { width: (packed & 0x3fff) + 1, height: ((packed >>> 14) & 0x3fff) + 1 }, moving: false };
  }
  const fourteen = (at: number) => view.getUint16(at, true) & 0x3fff;
  return { kind, size: form === 'VP8 ' ? { width: fourteen(26), height: fourteen(28) } : null, moving: false };
}
