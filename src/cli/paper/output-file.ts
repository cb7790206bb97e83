/** A file to write. */
export interface OutputFile {
  readonly path: string;
  readonly bytes: Uint8Array | string;
}
