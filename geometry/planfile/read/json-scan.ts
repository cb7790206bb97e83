import type { Step } from '../pointer.ts';

/** Where JSON text stops being JSON, what stands there and what should. */
export interface JsonTrouble {
  readonly at: number;
  readonly found: string;
  readonly expected: string;
}
export type JsonScan =
  | { readonly ok: true; readonly doubled: readonly (readonly Step[])[] }
  | ({ readonly ok: false } & JsonTrouble);

/** A plan is 8 deep. A file that nests hundreds deep is no plan, and would overflow the walks over it. */
const DEEPEST = 200;

const BLANKS = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/**
 * Walks over JSON text without building anything: the engines' own messages have no place in one browser and another
 * wording in the next. Accepts exactly what JSON.parse accepts, to a depth of 200.
 */
export function scanJson(text: string): JsonScan {
  const scanner = new Scanner(text);
  try {
    scanner.document();
  } catch (trouble) {
    if (trouble instanceof Trouble) return { ok: false, ...trouble.where };
    throw trouble;
  }
  return { ok: true, doubled: scanner.doubled };
}

/** Leaves the scan from any depth; caught in `scanJson`, never seen outside. */
class Trouble extends Error {
  readonly where: JsonTrouble;
  constructor(where: JsonTrouble) {
    super(where.expected);
    this.where = where;
  }
}

class Scanner {
  readonly doubled: (readonly Step[])[] = [];
  readonly #text: string;
  readonly #path: Step[] = [];
  #at = 0;

  constructor(text: string) {
    this.#text = text;
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
      if (keys.has(key)) this.doubled.push([...this.#path, key]);
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

  /** Everything between the brackets; `step` reads what stands before a value and says which step leads to it. */
  #inside(close: string, separator: string, step: () => Step): void {
    if (this.#path.length >= DEEPEST) this.#fail(`nesting at most ${DEEPEST} deep`);
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
      else this.#fail('a closing quote'); // the end of the text (NaN), or a bare control sign
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
    throw new Trouble({ at: this.#at, found: code === undefined ? 'the end of the file' : signName(code), expected });
  }
}

function signName(code: number): string {
  if (code === 0x0a || code === 0x0d) return 'the end of the line';
  if (code < 0x20 || code === 0x7f || code === 0xfffd) return `the unprintable sign ${code}`;
  return String.fromCodePoint(code);
}
