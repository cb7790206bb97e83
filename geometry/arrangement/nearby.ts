import { mayReach } from './space.ts';
import type { Grown, Space } from './zone.ts';

/** As many questions as this are answered by going through everything: putting things in order takes longer. */
const FEW = 8;

/** Finds the zones that may reach into a space, in the order of their list. */
export class Nearby {
  private readonly all: readonly Grown[];
  private asked = 0;
  /** Places in the list by left edge, and those edges. */
  private order = new Int32Array(0);
  private lefts = new Float64Array(0);
  /** The rightmost edge of all up to each place in the order. */
  private rights = new Float64Array(0);

  constructor(all: readonly Grown[]) {
    this.all = all;
  }

  to(space: Space): Grown[] {
    const { all } = this;
    const found: Grown[] = [];
    if (this.asked++ < FEW) {
      for (const one of all) if (mayReach(space, one)) found.push(one);
      return found;
    }
    if (this.order.length === 0) this.putInOrder();
    const { extent } = space;
    const places: number[] = [];
    // Those before all end left of the extent, those after begin right of it.
    for (let k = firstFrom(this.rights, extent.minX); k < this.lefts.length; k++) {
      if ((this.lefts[k] as number) > extent.maxX) break;
      const place = this.order[k] as number;
      if (mayReach(space, all[place] as Grown)) places.push(place);
    }
    places.sort((a, b) => a - b);
    for (const place of places) found.push(all[place] as Grown);
    return found;
  }

  private putInOrder(): void {
    const { all } = this;
    const left = (i: number) => (all[i] as Grown).minX;
    this.order = new Int32Array(all.length).map((_, i) => i).sort((i, j) => left(i) - left(j));
    this.lefts = Float64Array.from(this.order, left);
    let right = Number.NEGATIVE_INFINITY;
    this.rights = Float64Array.from(this.order, (i) => {
      right = Math.max(right, (all[i] as Grown).maxX);
      return right;
    });
  }
}

/** The first place in rising values that is at least this. */
function firstFrom(values: Float64Array, least: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] as number) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
