import type { Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import type { Chosen } from './best-first.ts';
import type { Limit } from './field/primitives.ts';
import type { Ground } from './ground.ts';

/** A good place for several detectors side by side. Lengths in mm. */
export interface SpotGroup {
  /** The axes of the detectors. */
  readonly at: readonly XY[];
  /** The base height: that of the probe, or the top of the object that supports them. */
  readonly base: Mm;
  /** Id of the object that supports them all; null if none was requested. */
  readonly on: string | null;
  readonly room: Room;
  /** The least of measured − required over the rules in plan and in space, and over the detectors. */
  readonly margin: Mm;
  /** Upper bound of the margin of every such group far enough from those before it. */
  readonly bound: Mm;
  /** What determines the margin; null if no rule has anything to measure. */
  readonly limitedBy: Limit | null;
  /** Whether each detector keeps the gap to every other; else only to its neighbors in a row. */
  readonly mutual: boolean;
}

interface Members {
  readonly ground: Ground;
  readonly at: readonly XY[];
  readonly margin: Mm;
}

/** Returns a chosen place as a group. `limitedBy` is that of the member with the smallest margin. */
export function groupOf({ ground, at, margin, bound }: Chosen<Members>, mutual: boolean): SpotGroup {
  const { field, room, on } = ground;
  const margins = at.map(([x, y]) => field.margin(x, y));
  const [x, y] = at[margins.indexOf(Math.min(...margins))] as XY;
  const { base } = field.probe;
  return { at, base, on: on?.id ?? null, room, margin, bound, limitedBy: field.limitedBy(x, y), mutual };
}
