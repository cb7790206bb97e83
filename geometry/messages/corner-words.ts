import type { XY } from '../plan/model.ts';
import type { Line } from '../plane/types.ts';
import { wallEndNames } from './subject.ts';

/** The words that distinguish one corner from the other: its name, and from where it has that name. */
export interface CornerWords {
  readonly name: ReturnType<typeof wallEndNames>['from'];
  readonly seen: 'facing the wall' | 'on the page';
}

/**
 * Returns the words for the corners at the two ends of a line along a wall. A tester tapes facing the wall, so left and
 * right are as seen from its only room; with rooms on both sides, or none, they are those of the page.
 *
 * @param facing direction in which a person in the only room faces the wall, page axes; null for two rooms or none
 */
export function cornerWords([from, to]: Line, facing: XY | null): Readonly<Record<'from' | 'to', CornerWords>> {
  if (!facing) {
    const names = wallEndNames({ from, to });
    return { from: { name: names.from, seen: 'on the page' }, to: { name: names.to, seen: 'on the page' } };
  }
  const [x, y] = facing;
  // With y down, left of the direction (x, y) is (y, −x).
  const isLeftFirst = (to[0] - from[0]) * y - (to[1] - from[1]) * x < 0;
  const [first, second] = isLeftFirst ? (['left', 'right'] as const) : (['right', 'left'] as const);
  return { from: { name: first, seen: 'facing the wall' }, to: { name: second, seen: 'facing the wall' } };
}
