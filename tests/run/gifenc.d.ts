/** The part of gifenc 1.0.3 that is used here; the package has no types. */
declare module 'gifenc' {
  type Color = readonly number[];
  interface Encoder {
    writeFrame(
      index: Uint8Array,
      width: number,
      height: number,
      options: {
        readonly palette?: readonly Color[] | undefined;
        readonly transparent: boolean;
        readonly transparentIndex: number;
        readonly delay: number;
        readonly dispose: number;
      },
    ): void;
    finish(): void;
    bytes(): Uint8Array;
  }
  const gifenc: {
    GIFEncoder(): Encoder;
    quantize(rgba: Uint8Array, maxColors: number): Color[];
    applyPalette(rgba: Uint8Array, palette: readonly Color[]): Uint8Array;
  };
  export default gifenc;
}
