/** Loader of the code of one part of the page. A store that a component subscribes to. */
export class PartSource<Part> {
  /** Null until the code is loaded. */
  part: Part | null = null;
  /** Whether the last request failed; false again during the next one. */
  isMissing = false;
  readonly #load: () => Promise<Part>;
  readonly #listeners = new Set<() => void>();
  #request: Promise<void> | null = null;

  constructor(load: () => Promise<Part>) {
    this.#load = load;
  }

  /** Requests the code unless it is loaded or requested. Never rejects; see `isMissing`. */
  request(): Promise<void> {
    if (this.part) return Promise.resolve();
    this.#request ??= this.#fetch();
    return this.#request;
  }

  /** Calls `listener` when `part` or `isMissing` has changed. Returns the function that unsubscribes. */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  async #fetch(): Promise<void> {
    this.#notify({ part: null, isMissing: false });
    const part = await this.#load().catch(() => null);
    this.#request = null;
    this.#notify({ part, isMissing: part === null });
  }

  #notify({ part, isMissing }: Pick<PartSource<Part>, 'part' | 'isMissing'>): void {
    this.part = part;
    this.isMissing = isMissing;
    for (const listener of this.#listeners) listener();
  }
}
