/**
 * A plan split into its long texts and the rest. Pictures make a plan long: each is one string, a data URL. Such a string is stored once for
 * all versions of a plan, under a hash of its content. Pieces and names are in separate lists, so that no text of a plan can be mistaken
 * for a name.
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

/** Minimum length of a long text, characters: shorter data URLs stay in the plan's text. */
const LEAST_LENGTH = 4096;
/** A JSON string that is a data URL, without its quotes. It contains no escapes, so it is stored unchanged. */
const DATA_ADDRESS = new RegExp(`(?<=")data:[^"\\\\]{${LEAST_LENGTH},}(?=")`, 'g');

/** Takes the long texts out of the text of a plan. `joinText` restores exactly the same text. */
export function splitText(text: string): Split {
  const longTexts = new Map<string, string>();
  const long: string[] = [];
  const pieces: string[] = [];
  let after = 0;
  // A text without pictures is not searched, for speed.
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

/** Returns the whole text; null if one of the long texts is missing. */
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

/** Returns whether a value from a store or a file is a split text. */
export function isSplitText(value: unknown): value is SplitText {
  if (typeof value !== 'object' || value === null) return false;
  const { pieces, long } = value as Partial<Record<keyof SplitText, unknown>>;
  return isTexts(pieces) && isTexts(long) && pieces.length === long.length + 1;
}

function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((each) => typeof each === 'string');
}

/** Returns a name that no other text of the plan has: with equal hashes one of two texts would be lost. */
function freeName(text: string, taken: ReadonlyMap<string, string>): string {
  let name = textHash(text);
  while (taken.has(name) && taken.get(name) !== text) name += '+';
  return name;
}

const named = new Map<string, string>();
const MOST_NAMED = 16;

/**
 * Returns a hash of the text: its length and 106 mixed bits. Computed synchronously and not by `crypto.subtle`, which is too late for a
 * page that is being closed, and missing on a page without https. Accidental collisions are unlikely, but it is no cryptographic hash: long
 * texts with the same name are compared as well.
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

/** Returns 53 bits in base 36, by multiplying and folding two halves: bryc's cyrb53 (public domain). */
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
