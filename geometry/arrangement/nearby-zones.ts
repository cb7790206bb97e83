import { mayReach, type Space } from './space.ts';
import type { GrownZone } from './zone.ts';

/** This many queries are answered by a linear scan; sorting would take longer. */
const FEW_QUERIES = 8;

/** Finds the zones that may reach into a space, in list order. */
export class NearbyZones {
  private readonly all: readonly GrownZone[];
  private asked = 0;
  /** Zone indices sorted by left edge, and those edges. */
  private order = new Int32Array(0);
  private lefts = new Float64Array(0);
  /** The maximum right edge of all zones up to each position. */
  private rights = new Float64Array(0);

  constructor(all: readonly GrownZone[]) {
    this.all = all;
  }

  to(space: Space): GrownZone[] {
    const { all } = this;
    const found: GrownZone[] = [];
    if (this.asked++ < FEW_QUERIES) {
      for (const one of all) if (mayReach(space, one)) found.push(one);
      return found;
    }
    if (this.order.length === 0) this.putInOrder();
    const { extent } = space;
    const places: number[] = [];
    // All zones before the first position end left of the extent, all after the loop begin right of it.
    for (let k = firstFrom(this.rights, extent.minX); k < this.lefts.length; k++) {
      if ((this.lefts[k] as number) > extent.maxX) break;
      const place = this.order[k] as number;
      if (mayReach(space, all[place] as GrownZone)) places.push(place);
    }
    places.sort((a, b) => a - b);
    for (const place of places) found.push(all[place] as GrownZone);
    return found;
  }

  private putInOrder(): void {
    const { all } = this;
    const left = (i: number) => (all[i] as GrownZone).minX;
    this.order = new Int32Array(all.length).map((_, i) => i).sort((i, j) => left(i) - left(j));
    this.lefts = Float64Array.from(this.order, left);
    let right = Number.NEGATIVE_INFINITY;
    this.rights = Float64Array.from(this.order, (i) => {
      right = Math.max(right, (all[i] as GrownZone).maxX);
      return right;
    });
  }
}

/** Binary search for the first position in ascending values that is at least `least`. */
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
