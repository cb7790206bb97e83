export { isShowable } from '../drawing/picture-head.ts';

/** Whether the file says that it is a picture, or a scan in a PDF: what to do with one that is dropped or pasted. */
export const isPictureFile = (file: File): boolean =>
  /^image\/|^application\/pdf$/.test(file.type) ||
  /\.(?:png|jpe?g|webp|hei[cf]|gif|bmp|tiff?|avif|pdf)$/i.test(file.name);

/** How much of a file that is, in words: "0.4 MB", "less than 0.1 MB". */
export function megabytes(bytes: number): string {
  return bytes < 100_000 ? 'less than 0.1 MB' : `${(bytes / 1e6).toFixed(1)} MB`;
}
