/** A step of a path: a key of an object or an index of an array. */
export type Step = string | number;

/** Returns the JSON pointer (RFC 6901) of a path; "" for the root. */
export function pointerTo(path: readonly Step[]): string {
  return path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** One reason why a file is refused. */
export interface PlanProblem {
  /** JSON pointer (RFC 6901) to the value; "" for the file as a whole. */
  readonly pointer: string;
  /** The value found, shortened; "nothing" when a key is missing. */
  readonly found: string;
  /** What was expected. */
  readonly expected: string;
  /** Found and expected in a sentence that names the item. */
  readonly message: string;
}

/** Returns a short description of a value. */
export function foundWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return objectWords(Object.keys(value));
  return typeof value === 'string' ? quoted(value) : String(value);
}

function objectWords(keys: readonly string[]): string {
  if (keys.length === 0) return 'an empty object';
  const shown = keys.slice(0, 4).map(quoted).join(', ');
  return `an object with ${shown}${keys.length > 4 ? ' and more' : ''}`;
}

/** Returns text in quotes, shortened. */
export function quoted(text: string): string {
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}

/** A semantic error in valid structure. The reader adds the path and the name of the item, the editor only the name. */
export interface Flaw {
  /** The path from the item to the value. */
  readonly path: readonly Step[];
  readonly found: string;
  readonly expected: string;
  /** The end of a sentence that begins with the item: "reaches 4 in past the end of its wall. Slide it back …". */
  readonly statement: string;
}
