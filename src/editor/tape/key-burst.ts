/**
 * Tells a laser tape that types, as a keyboard does, from a hand. A burst is three keys or more, Enter and Tab included, each within
 * the gap of the one before (`tape-store.ts`).
 */

const FEWEST_KEYS = 3;
/** A length begins with a digit or a point. */
const FIRST = /^[0-9.]$/;
/** What a length may have: marks of feet and inches, units, fractions. */
const INNER = /^[0-9.,'"′″/ \-+a-z]$/i;

/** A key press, and when it was made, ms. */
export interface TapeKey {
  readonly key: string;
  readonly at: number;
}

/** What ends a burst; null for a pause. */
export type BurstEnd = 'Enter' | 'Tab' | null;

/** Where the keys go. */
export type KeyUse =
  /** They are shortcuts: they are held back until it is clear that a hand pressed them. */
  | 'shortcuts'
  /** They go into a field for a length, or open one: they are only watched. */
  | 'length'
  /** Into another field, or with Ctrl or Alt. */
  | 'other';

export interface BurstActions<Key extends TapeKey> {
  /** A hand pressed these keys: they go to what they mean. */
  replay(keys: readonly Key[]): void;
  /** A tape typed a text. For keys of a field, returns whether the key that ends it is taken. */
  typed(text: string, end: BurstEnd, use: 'shortcuts' | 'length'): boolean;
  /** The longest time between two keys of a burst, ms. */
  gap(): number;
  /** Calls back after ms; returns what stops it. */
  after(ms: number, call: () => void): () => void;
  /** Whether keys wait that the page has not been told of. */
  hasMore(): boolean;
}

export class KeyBurst<Key extends TapeKey> {
  readonly #actions: BurstActions<Key>;
  #keys: Key[] = [];
  #use: 'shortcuts' | 'length' = 'length';
  #lastAt = 0;
  #stop: () => void = () => undefined;

  constructor(actions: BurstActions<Key>) {
    this.#actions = actions;
  }

  /** Takes note of a key press. Returns whether nobody else may have it. */
  press(key: Key, use: KeyUse): boolean {
    if (key.at - this.#lastAt > this.#actions.gap()) this.#end(null);
    this.#lastAt = key.at;
    if (use === 'other') {
      this.#end(null);
      return false;
    }
    // The marks of feet and inches are made with Shift.
    if (key.key === 'Shift' && this.#keys.length > 0) {
      this.#wait();
      return this.#use === 'shortcuts';
    }
    if (key.key === 'Enter' || key.key === 'Tab') return this.#end(key);
    const begins = this.#keys.length === 0;
    if (!(begins ? FIRST : INNER).test(key.key)) {
      this.#end(null);
      return false;
    }
    if (begins) this.#use = use;
    this.#keys.push(key);
    this.#wait();
    return this.#use === 'shortcuts';
  }

  #wait(): void {
    this.#stop();
    this.#stop = this.#actions.after(this.#actions.gap(), () => {
      if (this.#actions.hasMore()) this.#wait();
      else this.#end(null);
    });
  }

  /** Returns whether the key that ends it is taken. */
  #end(by: Key | null): boolean {
    this.#stop();
    const keys = this.#keys;
    this.#keys = [];
    if (keys.length === 0) return false;
    if (keys.length + (by ? 1 : 0) >= FEWEST_KEYS) {
      const text = keys.map(({ key }) => key).join('');
      const taken = this.#actions.typed(text, by && (by.key as 'Enter' | 'Tab'), this.#use);
      return taken || this.#use === 'shortcuts';
    }
    if (this.#use === 'shortcuts') this.#actions.replay(keys);
    return false;
  }
}
