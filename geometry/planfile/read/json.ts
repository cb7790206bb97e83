import type { Step } from '../problem.ts';

/** Where JSON text has a syntax error, what was found there and what was expected. */
interface JsonError {
  readonly at: number;
  readonly found: string;
  readonly expected: string;
}
type JsonScan =
  | { readonly ok: true; readonly duplicateKeys: readonly (readonly Step[])[] }
  | ({ readonly ok: false } & JsonError);

/**
 * A plan nests 8 levels deep; unknown keys may nest deeper. Deeper nesting than this is refused, because it would overflow the stack of
 * recursive functions.
 */
const DEEPEST = 200;

const BLANKS = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/**
 * Validates JSON text without building values, because the error messages of `JSON.parse` differ between engines and
 * some have no position.
 * Accepts exactly what `JSON.parse` accepts, to a depth of `deepest`.
 */
function scanJson(text: string, deepest: number): JsonScan {
  const scanner = new Scanner(text, deepest);
  try {
    scanner.document();
  } catch (trouble) {
    if (trouble instanceof ScanError) return { ok: false, ...trouble.where };
    throw trouble;
  }
  return { ok: true, duplicateKeys: scanner.duplicateKeys };
}

/** Unwinds the scan from any depth; caught in `scanJson`. */
class ScanError extends Error {
  readonly where: JsonError;
  constructor(where: JsonError) {
    super(where.expected);
    this.where = where;
  }
}

class Scanner {
  readonly duplicateKeys: (readonly Step[])[] = [];
  readonly #text: string;
  readonly #deepest: number;
  readonly #path: Step[] = [];
  #at = 0;

  constructor(text: string, deepest: number) {
    this.#text = text;
    this.#deepest = deepest;
  }

  document(): void {
    this.#value();
    this.#blanks();
    if (this.#at < this.#text.length) this.#fail('the end of the file');
  }

  #value(): void {
    this.#blanks();
    const sign = this.#text[this.#at];
    if (sign === '{') this.#object();
    else if (sign === '[') this.#list();
    else if (sign === '"') this.#string('a value');
    else if (!this.#take(NUMBER) && !this.#take(WORD)) this.#fail('a value');
  }

  #object(): void {
    const keys = new Set<string>();
    this.#inside('}', 'a comma or }', () => {
      const start = this.#at;
      this.#string('a key in double quotes');
      const key: string = JSON.parse(this.#text.slice(start, this.#at));
      if (keys.has(key)) this.duplicateKeys.push([...this.#path, key]);
      keys.add(key);
      this.#blanks();
      if (this.#text[this.#at] !== ':') this.#fail('a colon');
      this.#at += 1;
      return key;
    });
  }

  #list(): void {
    let index = 0;
    this.#inside(']', 'a comma or ]', () => index++);
  }

  /** Reads everything between the brackets; `step` reads what precedes a value and returns its step. */
  #inside(close: string, separator: string, step: () => Step): void {
    if (this.#path.length >= this.#deepest) this.#fail(`nesting at most ${this.#deepest} deep`);
    this.#at += 1;
    this.#blanks();
    if (this.#text[this.#at] === close) {
      this.#at += 1;
      return;
    }
    for (;;) {
      this.#blanks();
      this.#path.push(step());
      this.#value();
      this.#path.pop();
      this.#blanks();
      const sign = this.#text[this.#at];
      if (sign !== ',' && sign !== close) this.#fail(separator);
      this.#at += 1;
      if (sign === close) return;
    }
  }

  #string(expected: string): void {
    if (this.#text[this.#at] !== '"') this.#fail(expected);
    this.#at += 1;
    for (;;) {
      const code = this.#text.charCodeAt(this.#at);
      if (code === 0x22) break;
      if (code === 0x5c) {
        if (!this.#take(ESCAPE)) this.#fail('an escape like \\n or \\u00e9');
      } else if (code >= 0x20) this.#at += 1;
      else this.#fail('a closing quote'); // the end of the text (NaN), or an unescaped control character
    }
    this.#at += 1;
  }

  #blanks(): void {
    this.#take(BLANKS);
  }

  #take(what: RegExp): boolean {
    what.lastIndex = this.#at;
    if (!what.test(this.#text)) return false;
    this.#at = what.lastIndex;
    return true;
  }

  #fail(expected: string): never {
    const code = this.#text.codePointAt(this.#at);
    throw new ScanError({ at: this.#at, found: code === undefined ? 'the end of the file' : signName(code), expected });
  }
}

function signName(code: number): string {
  if (code === 0x0a || code === 0x0d) return 'the end of the line';
  if (code < 0x20 || code === 0x7f || code === 0xfffd) return `the unprintable sign ${code}`;
  return String.fromCodePoint(code);
}

export type JsonText =
  | { readonly ok: true; readonly value: unknown; readonly duplicateKeys: readonly (readonly Step[])[] }
  | ({ readonly ok: false } & JsonError & { readonly line: number; readonly column: number });

/**
 * Parses JSON text (RFC 8259) and reports the line and column of a syntax error, counted from 1. A leading byte order
 * mark is skipped. `duplicateKeys` are the paths of keys that occur twice in one object, which `JSON.parse` would
 * drop silently. Never throws.
 * @param around how much deeper than a plan the text may nest, because plans are inside it
 */
export function readJson(text: string, around = 0): JsonText {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const scan = scanJson(body, DEEPEST + around);
  if (!scan.ok) return { ...scan, ...lineAndColumn(body, scan.at) };
  return { ok: true, value: JSON.parse(body), duplicateKeys: scan.duplicateKeys };
}

function lineAndColumn(text: string, at: number): { line: number; column: number } {
  const lines = text.slice(0, at).split(/\r\n|\r|\n/);
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 };
}
