/**
 * Distinguishes a laser tape, which types as a keyboard does, from typing by hand. A burst is three keys or more, Enter and Tab included,
 * each within the gap (`tape-store.ts`) after the one before.
 */

const FEWEST_KEYS = 3;
/** A length begins with a digit or a point. */
const FIRST = /^[0-9.]$/;
/** Characters within a length: digits, marks of feet and inches, units, fractions. */
const INNER = /^[0-9.,'"′″/ \-+a-z]$/i;

/** A key press and its time, ms. */
export interface TapeKey {
  readonly key: string;
  readonly at: number;
}

/** The key that ends a burst; null for a pause. */
export type BurstEnd = 'Enter' | 'Tab' | null;

/** What the keys are used for. */
export type KeyUse =
  /** Shortcuts, which are held back until it is clear that they were pressed by hand. */
  | 'shortcuts'
  /** Input of a field for a length, or keys that open one, which are only watched. */
  | 'length'
  /** Input of another field, or keys with Ctrl or Alt. */
  | 'other';

export interface BurstActions<Key extends TapeKey> {
  /** Sends keys that were pressed by hand to their shortcuts. */
  replay(keys: readonly Key[]): void;
  /** Handles a text that a tape typed. For keys of a field, returns whether the key that ends the text is consumed. */
  typed(text: string, end: BurstEnd, use: 'shortcuts' | 'length'): boolean;
  /** The longest time between two keys of a burst, ms. */
  gap(): number;
  /** Calls back after `ms`; returns a function that cancels the call. */
  after(ms: number, call: () => void): () => void;
  /** Whether the browser holds keys that the page has not received yet. */
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

  /** Handles a key press. Returns whether the key is consumed. */
  press(key: Key, use: KeyUse): boolean {
    if (key.at - this.#lastAt > this.#actions.gap()) this.#end(null);
    this.#lastAt = key.at;
    if (use === 'other') {
      this.#end(null);
      return false;
    }
    // The marks of feet and inches are typed with Shift.
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

  /** Ends the burst. Returns whether the key that ends it is consumed. */
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
