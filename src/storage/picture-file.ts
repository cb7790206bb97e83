export { isShowable } from '../drawing/picture-head.ts';

/** Returns whether the type or name of a dropped or pasted file is that of a picture or a PDF scan. */
export const isPictureFile = (file: File): boolean =>
  /^image\/|^application\/pdf$/.test(file.type) ||
  /\.(?:png|jpe?g|webp|hei[cf]|gif|bmp|tiff?|avif|pdf)$/i.test(file.name);

/** Returns a file size in words: "0.4 MB", "less than 0.1 MB". */
export function megabytes(bytes: number): string {
  return bytes < 100_000 ? 'less than 0.1 MB' : `${(bytes / 1e6).toFixed(1)} MB`;
}
