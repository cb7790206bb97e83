/** Whether the file says that it is a picture, or a scan in a PDF: what to do with one that is dropped or pasted. */
export const saysPicture = (file: File): boolean =>
  /^image\/|^application\/pdf$/.test(file.type) ||
  /\.(?:png|jpe?g|webp|hei[cf]|gif|bmp|tiff?|avif|pdf)$/i.test(file.name);
