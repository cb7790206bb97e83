/**
 * Pictures make a plan long: each is one string, a data address. Such strings are stored once, under a hash of their
 * content, however many versions of a plan have them. A split text holds pieces and names in separate lists, so no text
 * of a plan can be mistaken for a name.
 */
export interface SplitText {
  /** The text between the long texts: always one piece more than there are names. */
  readonly pieces: readonly string[];
  /** Names of the long texts, in their order. */
  readonly long: readonly string[];
}

export interface Split {
  readonly text: SplitText;
  /** Its long texts by name, each once. */
  readonly longTexts: ReadonlyMap<string, string>;
}

/** Shorter ones get no record of their own, characters. */
const LEAST_LENGTH = 4096;
/** A JSON string that is a data address, without its quotes. It holds no escapes, so it is stored as it is. */
const DATA_ADDRESS = new RegExp(`(?<=")data:[^"\\\\]{${LEAST_LENGTH},}(?=")`, 'g');

/** Takes the long texts out of the text of a plan. `joinText` restores exactly the same text. */
export function splitText(text: string): Split {
  const longTexts = new Map<string, string>();
  const long: string[] = [];
  const pieces: string[] = [];
  let after = 0;
  // A text without pictures is returned at once.
  for (const found of text.includes('"data:') ? text.matchAll(DATA_ADDRESS) : []) {
    const [address] = found;
    const name = freeName(address, longTexts);
    longTexts.set(name, address);
    long.push(name);
    pieces.push(text.slice(after, found.index));
    after = found.index + address.length;
  }
  pieces.push(text.slice(after));
  return { text: { pieces, long }, longTexts };
}

/** Returns the whole text; null where one of the long texts is missing. */
export function joinText(
  { pieces, long }: SplitText,
  longTexts: { get(name: string): string | undefined },
): string | null {
  let text = pieces[0] ?? '';
  for (const [index, name] of long.entries()) {
    const address = longTexts.get(name);
    if (address === undefined) return null;
    text += address + (pieces[index + 1] ?? '');
  }
  return text;
}

/** Whether the value is a split text, as it comes out of a store or a file. */
export function isSplitText(value: unknown): value is SplitText {
  if (typeof value !== 'object' || value === null) return false;
  const { pieces, long } = value as Partial<Record<keyof SplitText, unknown>>;
  return isTexts(pieces) && isTexts(long) && pieces.length === long.length + 1;
}

function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((each) => typeof each === 'string');
}

/** Two different texts of one name within a plan would lose one of them, however unlikely that is. */
function freeName(text: string, taken: ReadonlyMap<string, string>): string {
  let name = textHash(text);
  while (taken.has(name) && taken.get(name) !== text) name += '+';
  return name;
}

const named = new Map<string, string>();
const MOST_NAMED = 16;

/**
 * A name made of the text alone: its length and 106 bits mixed from all of it. Computed synchronously and not by `crypto.subtle`,
 * which is too late for a page that is being closed and missing on a page without https. It guards against chance, not
 * against malice: callers compare the texts.
 */
export function textHash(text: string): string {
  const known = named.get(text);
  if (known) return known;
  const name = `${text.length.toString(36)}-${mixed(text, 0)}-${mixed(text, 0x9e3779b9)}`;
  if (text.length >= LEAST_LENGTH) {
    if (named.size >= MOST_NAMED) named.clear();
    named.set(text, name);
  }
  return name;
}

/** 53 bits, by multiplying and folding two halves: bryc's cyrb53 (public domain). */
function mixed(text: string, seed: number): string {
  let a = 0xdeadbeef ^ seed;
  let b = 0x41c6ce57 ^ seed;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 2654435761);
    b = Math.imul(b ^ code, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (4294967296 * (2097151 & b) + (a >>> 0)).toString(36);
}
