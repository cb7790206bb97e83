/** One reason why a file is refused. */
export interface PlanProblem {
  /** JSON pointer (RFC 6901) to the place; empty for the file as a whole. */
  readonly pointer: string;
  /** What stands there, cut short where it is long; "nothing" where a key is missing. */
  readonly found: string;
  /** What belongs there. */
  readonly expected: string;
  /** Both as a sentence that names the thing. */
  readonly message: string;
}

/** A value of a file in a few words. */
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

/** Text of a file in quotes, cut short where it is long. */
export function quoted(text: string): string {
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}
