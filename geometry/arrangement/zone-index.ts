import Flatbush from 'flatbush';
import type { Mm } from '../plane/types.ts';
import { COINCIDENT, containsStrictly, type GrownZone } from './zone.ts';

/** With more zones than this a spatial index is used; below, a linear scan is faster. */
export const INDEX_THRESHOLD = 400;

/** At most this many consecutive zones are followed along a line, each covering at least this fraction of it. */
const MOST_STEPS = 8;
const LEAST_STEP = 1e-5;

/** This many zones that covered recent lines are tried first; covering this fraction of a line is good enough. */
const MOST_RECENT = 6;
const GOOD_STEP = 0.05;

/** x and y of the start, x and y of the end. */
export type FlatLine = readonly [Mm, Mm, Mm, Mm];

/** A spatial index of many zones. Zones are identified by their index in the list. */
export class ZoneIndex {
  private readonly zones: readonly GrownZone[];
  private readonly index: Flatbush;
  /** The zones that covered recent lines, most recent first. */
  private readonly recent: number[] = [];

  constructor(zones: readonly GrownZone[]) {
    this.zones = zones;
    this.index = new Flatbush(zones.length);
    for (const { minX, minY, maxX, maxY } of zones) this.index.add(minX, minY, maxX, maxY);
    this.index.finish();
  }

  /** Returns whether the predicate holds for a zone whose bounding box contains the point. */
  someAt(x: Mm, y: Mm, predicate: (z: number) => boolean): boolean {
    let found = false;
    this.index.search(x - COINCIDENT, y - COINCIDENT, x + COINCIDENT, y + COINCIDENT, (z) => {
      found ||= predicate(z);
      return false; // the search's own result is not used
    });
    return found;
  }

  /**
   * Like `someAt`, for zones that may cover something with its minimum corner at (x, y): recently covering zones are
   * tried first.
   */
  someCovering(x: Mm, y: Mm, predicate: (z: number) => boolean): boolean {
    if (this.recent.some(predicate)) return true;
    let covering = -1;
    this.someAt(x, y, (z) => {
      if (predicate(z)) covering = z;
      return covering >= 0;
    });
    if (covering >= 0) this.remember(covering);
    return covering >= 0;
  }

  private remember(covering: number): void {
    this.recent.unshift(covering);
    if (this.recent.length > MOST_RECENT) this.recent.pop();
  }

  /** Returns the fraction, 0…1, of a line that zones other than its own cover without a gap from its start. */
  coveredFraction(line: FlatLine, own: number): number {
    let from = 0;
    for (let step = 0; step < MOST_STEPS; step++) {
      const to = this.coveredByOne(line, own, from);
      if (to === 1) return 1;
      if (to - from < LEAST_STEP) return from;
      from = to;
    }
    return from;
  }

  /**
   * Returns how far, 0…1, one zone covers a line from a point on it: a recently covering zone if one does, else the one
   * that reaches farthest.
   */
  private coveredByOne(line: FlatLine, own: number, from: number): number {
    const { zones, recent } = this;
    const [x0, y0, x1, y1] = line;
    const x = x0 + (x1 - x0) * from;
    const y = y0 + (y1 - y0) * from;
    let to = from;
    let best = -1;
    const tryZone = (z: number): boolean => {
      const zone = zones[z] as GrownZone;
      if (z === own || !zone.convex || !containsStrictly(zone, x, y)) return false;
      const covered = coveredUpTo(zone, line, to);
      if (covered > to) best = z;
      to = covered;
      return to === 1;
    };
    if (recent.some(tryZone) || to - from >= GOOD_STEP) return to;
    this.someAt(x, y, tryZone);
    if (best >= 0 && !recent.includes(best)) this.remember(best);
    return to;
  }
}

/**
 * Returns how far, 0…1, a convex zone that contains the start of a line covers it, by bisection; `atLeast` when it is
 * no farther.
 */
function coveredUpTo(zone: GrownZone, [x0, y0, x1, y1]: FlatLine, atLeast: number): number {
  const isCovered = (t: number) => containsStrictly(zone, x0 + (x1 - x0) * t, y0 + (y1 - y0) * t);
  if (isCovered(1)) return 1;
  let covered = atLeast + LEAST_STEP;
  if (covered >= 1 || !isCovered(covered)) return atLeast;
  let beyond = 1;
  while (beyond - covered > LEAST_STEP / 2) {
    const middle = (covered + beyond) / 2;
    if (isCovered(middle)) covered = middle;
    else beyond = middle;
  }
  return covered;
}
