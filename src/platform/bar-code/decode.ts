/**
 * Reads bar codes with the ZXing library, which is plain JavaScript: the page's policy allows no WebAssembly. Loaded when a camera or a
 * picture is first asked for.
 */
import BarcodeFormat from '@zxing/library/esm/core/BarcodeFormat';
import BinaryBitmap from '@zxing/library/esm/core/BinaryBitmap';
import HybridBinarizer from '@zxing/library/esm/core/common/HybridBinarizer';
import DecodeHintType from '@zxing/library/esm/core/DecodeHintType';
import DataMatrixReader from '@zxing/library/esm/core/datamatrix/DataMatrixReader';
import type LuminanceSource from '@zxing/library/esm/core/LuminanceSource';
import MultiFormatOneDReader from '@zxing/library/esm/core/oned/MultiFormatOneDReader';
import QRCodeReader from '@zxing/library/esm/core/qrcode/QRCodeReader';
import type Reader from '@zxing/library/esm/core/Reader';
import RGBLuminanceSource from '@zxing/library/esm/core/RGBLuminanceSource';

/**
 * Linear codes found on labels. Interleaved 2 of 5 is left out: a partly scanned code reads as a shorter number, and no check digit
 * reveals it.
 */
const LINEAR = [
  BarcodeFormat.CODE_128,
  BarcodeFormat.CODE_39,
  BarcodeFormat.CODE_93,
  BarcodeFormat.CODABAR,
  BarcodeFormat.EAN_13,
  BarcodeFormat.EAN_8,
  BarcodeFormat.UPC_A,
];

/** Without the library's "try harder" hint, which takes up to two seconds for a picture without a code. */
const HINTS = new Map<DecodeHintType, unknown>([[DecodeHintType.POSSIBLE_FORMATS, LINEAR]]);
const BARS = new MultiFormatOneDReader(HINTS);
const SQUARES = [new QRCodeReader(), new DataMatrixReader()];

/**
 * Returns the text of a bar code, QR code or Data Matrix code in a picture; empty if none is found. The picture is divided into `bands`
 * horizontal bands, and bar codes are searched on 15 rows around the middle of each. One band takes about 30 ms at 1024 by 768.
 */
export function decodeBarCode(picture: ImageData, bands: number): string {
  const { width, height } = picture;
  const source = new RGBLuminanceSource(grayOf(picture), width, height);
  const high = Math.floor(height / bands);
  for (let band = 0; band < bands; band++) {
    const text = textIn(BARS, source.crop(0, band * high, width, high));
    if (text) return text;
  }
  for (const reader of SQUARES) {
    const text = textIn(reader, source);
    if (text) return text;
  }
  return '';
}

function textIn(reader: Reader, source: LuminanceSource): string {
  try {
    return reader
      .decode(new BinaryBitmap(new HybridBinarizer(source)), HINTS)
      .getText()
      .trim();
  } catch {
    return ''; // the library throws if it finds no code
  }
}

/** Returns the brightness of each pixel, 0 to 255: green counts twice, as in the library. */
function grayOf({ data, width, height }: ImageData): Uint8ClampedArray {
  const gray = new Uint8ClampedArray(width * height);
  for (let at = 0; at < gray.length; at++) {
    const first = 4 * at;
    gray[at] = ((data[first] ?? 0) + 2 * (data[first + 1] ?? 0) + (data[first + 2] ?? 0)) / 4;
  }
  return gray;
}
