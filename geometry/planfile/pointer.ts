/** A step into the file: a key of an object or an index of a list. */
export type Step = string | number;

/** JSON pointer (RFC 6901) to a place of the file; empty for the whole of it. */
export function pointerTo(path: readonly Step[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}
