/** Whether a file says that it is a picture: what to do with one that is dropped or pasted. */
export const saysPicture = (file: File): boolean =>
  file.type.startsWith('image/') || /\.(?:png|jpe?g|webp|hei[cf]|gif|bmp|tiff?|avif)$/i.test(file.name);
