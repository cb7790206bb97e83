/** The size of a PNG on paper. Without it, programs assume a size of their own, and the page is not to scale. */

/** Signature and header chunk, bytes. */
const HEADER_LENGTH = 33;
const METERS_PER_INCH = 0.0254;

/** Returns the file with `dpi` in a pHYs chunk after the header: ISO/IEC 15948, 11.3.5.3. */
export function withDensity(png: Uint8Array, dpi: number): Uint8Array<ArrayBuffer> {
  const density = densityChunk(Math.round(dpi / METERS_PER_INCH));
  const rest = chunksOf(png).filter((chunk) => kindOf(chunk) !== 'pHYs'); // a browser may write the density of its screen
  const parts = [png.subarray(0, HEADER_LENGTH), density, ...rest];
  const file = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let end = 0;
  for (const part of parts) {
    file.set(part, end);
    end += part.length;
  }
  return file;
}

/** Returns the chunks after the header, each with length, type and CRC. */
function chunksOf(png: Uint8Array): readonly Uint8Array[] {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const chunks: Uint8Array[] = [];
  for (let at = HEADER_LENGTH; at < png.length; ) {
    const end = at + 12 + view.getUint32(at);
    chunks.push(png.subarray(at, end));
    at = end;
  }
  return chunks;
}

const kindOf = (chunk: Uint8Array) => String.fromCharCode(...chunk.subarray(4, 8));

function densityChunk(perMeter: number): Uint8Array {
  const chunk = new DataView(new ArrayBuffer(21));
  chunk.setUint32(0, 9);
  for (const [i, sign] of [...'pHYs'].entries()) chunk.setUint8(4 + i, sign.charCodeAt(0));
  chunk.setUint32(8, perMeter);
  chunk.setUint32(12, perMeter);
  chunk.setUint8(16, 1); // the unit is the meter
  chunk.setUint32(17, crc32(new Uint8Array(chunk.buffer, 4, 13)));
  return new Uint8Array(chunk.buffer);
}

/** CRC of a chunk: ISO/IEC 15948, Annex D. */
function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return ~rest >>> 0;
}
