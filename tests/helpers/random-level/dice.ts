/** Seeded random numbers: the same seed gives the same numbers on every machine (mulberry32, T. Ettinger 2017, public domain). */
export class Dice {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
    // The first numbers of neighboring seeds are similar, so a few are skipped.
    for (let i = 0; i < 3; i++) this.next();
  }

  /** Returns a number x, 0 ≤ x < 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  between(least: number, most: number): number {
    return least + (most - least) * this.next();
  }

  /** Returns an integer, both ends included. */
  int(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(list: readonly T[]): T {
    const one = list[Math.floor(this.next() * list.length)];
    if (one === undefined) throw new Error('nothing to pick from');
    return one;
  }

  shuffled<T>(list: readonly T[]): T[] {
    return list
      .map((one) => ({ one, at: this.next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ one }) => one);
  }
}
