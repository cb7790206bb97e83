import type { ComponentType } from 'react';

/** The code of one part of the page: what it is once it is there, and how to get it. A store that a component subscribes to. */
export class PartSource<Props> {
  /** Null until the code is there. */
  part: ComponentType<Props> | null = null;
  /** Whether the last request failed; false again while another one is under way. */
  isMissing = false;
  readonly #load: () => Promise<ComponentType<Props>>;
  readonly #listeners = new Set<() => void>();
  #request: Promise<void> | null = null;

  constructor(load: () => Promise<ComponentType<Props>>) {
    this.#load = load;
  }

  /** Requests the code unless it is there or under way. Resolves also when it cannot be had. */
  request(): Promise<void> {
    if (this.part) return Promise.resolve();
    this.#request ??= this.#fetch();
    return this.#request;
  }

  /** Calls `listener` when `part` or `isMissing` has changed. Returns what ends that. */
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

  #notify({ part, isMissing }: Pick<PartSource<Props>, 'part' | 'isMissing'>): void {
    this.part = part;
    this.isMissing = isMissing;
    for (const listener of this.#listeners) listener();
  }
}
