/** The part of the browser's own reader of bar codes that is used here; not in every browser. */
interface BarCodeReader {
  detect(picture: ImageBitmap): Promise<readonly { readonly rawValue: string }[]>;
}

declare global {
  interface Window {
    readonly BarcodeDetector?: new () => BarCodeReader;
  }
}

/** Returns whether this browser reads bar codes from a picture. */
export const canReadBarCodes = (): boolean => window.BarcodeDetector !== undefined;

/** Returns the text of the first bar code or QR code in a picture; empty where none is found or the picture cannot be read. */
export async function readBarCode(file: Blob): Promise<string> {
  const Reader = window.BarcodeDetector;
  if (!Reader) return '';
  try {
    const picture = await createImageBitmap(file);
    const [first] = await new Reader().detect(picture);
    picture.close();
    return first?.rawValue.trim() ?? '';
  } catch {
    return '';
  }
}
