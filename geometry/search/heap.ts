/** A priority queue (binary heap): the greatest rank first; of equal ranks the last added. */
export class Heap<Item> {
  private readonly items: { readonly item: Item; readonly rank: number; readonly turn: number }[] = [];
  private turns = 0;

  /** The greatest rank in the queue; negative infinity when it is empty. */
  get topRank(): number {
    return this.items[0]?.rank ?? Number.NEGATIVE_INFINITY;
  }

  push(item: Item, rank: number): void {
    const { items } = this;
    const entry = { item, rank, turn: this.turns++ };
    let k = items.length;
    items.push(entry);
    while (k > 0) {
      const parent = (k - 1) >> 1;
      if (!this.isBefore(entry, items[parent] as typeof entry)) break;
      items[k] = items[parent] as typeof entry;
      k = parent;
    }
    items[k] = entry;
  }

  pop(): Item | null {
    const { items } = this;
    const [first] = items;
    const last = items.pop();
    if (!first || !last) return null;
    if (items.length > 0) this.sink(last);
    return first.item;
  }

  private sink(entry: (typeof this.items)[number]): void {
    const { items } = this;
    let k = 0;
    for (;;) {
      let child = 2 * k + 1;
      if (child >= items.length) break;
      const right = child + 1;
      if (right < items.length && this.isBefore(items[right] as typeof entry, items[child] as typeof entry))
        child = right;
      if (!this.isBefore(items[child] as typeof entry, entry)) break;
      items[k] = items[child] as typeof entry;
      k = child;
    }
    items[k] = entry;
  }

  private isBefore(a: (typeof this.items)[number], b: (typeof this.items)[number]): boolean {
    return a.rank > b.rank || (a.rank === b.rank && a.turn > b.turn);
  }
}
