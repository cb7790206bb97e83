/**
 * A priority queue (binary heap): the greatest rank first; of equal ranks the last added. Items, ranks and turns are in separate
 * lists, because a search adds thousands, and an object for each would have to be garbage-collected.
 */
export class Heap<Item> {
  private readonly items: Item[] = [];
  private readonly ranks: number[] = [];
  private readonly turns: number[] = [];
  private added = 0;

  /** The greatest rank in the queue; negative infinity when it is empty. */
  get topRank(): number {
    return this.items.length > 0 ? (this.ranks[0] as number) : Number.NEGATIVE_INFINITY;
  }

  push(item: Item, rank: number): void {
    const { items, ranks, turns } = this;
    let k = items.length;
    const turn = this.added++;
    items.push(item);
    ranks.push(rank);
    turns.push(turn);
    while (k > 0) {
      const parent = (k - 1) >> 1;
      // The item added last comes before those of equal rank.
      if (!(rank >= (ranks[parent] as number))) break;
      items[k] = items[parent] as Item;
      ranks[k] = ranks[parent] as number;
      turns[k] = turns[parent] as number;
      k = parent;
    }
    items[k] = item;
    ranks[k] = rank;
    turns[k] = turn;
  }

  pop(): Item | null {
    const { items, ranks, turns } = this;
    if (items.length === 0) return null;
    const first = items[0] as Item;
    const item = items.pop() as Item;
    const rank = ranks.pop() as number;
    const turn = turns.pop() as number;
    if (items.length > 0) this.sink(item, rank, turn);
    return first;
  }

  /** Puts an item in place of the first, and moves it down to its place. */
  private sink(item: Item, rank: number, turn: number): void {
    const { items, ranks, turns } = this;
    const count = ranks.length;
    let k = 0;
    for (;;) {
      let child = 2 * k + 1;
      if (child >= count) break;
      const right = child + 1;
      if (right < count && this.isBefore(right, ranks[child] as number, turns[child] as number)) child = right;
      if (!this.isBefore(child, rank, turn)) break;
      items[k] = items[child] as Item;
      ranks[k] = ranks[child] as number;
      turns[k] = turns[child] as number;
      k = child;
    }
    items[k] = item;
    ranks[k] = rank;
    turns[k] = turn;
  }

  /** Returns whether an entry comes before one with this rank and turn. */
  private isBefore(k: number, rank: number, turn: number): boolean {
    const own = this.ranks[k] as number;
    return own > rank || (own === rank && (this.turns[k] as number) > turn);
  }
}
