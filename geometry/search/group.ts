import type { Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import type { Chosen } from './best-first.ts';
import type { Limit } from './field/primitives.ts';
import type { Ground } from './ground.ts';

/** A good place for several detectors side by side. Lengths in mm. */
export interface SpotGroup {
  /** Their axes. */
  readonly at: readonly XY[];
  /** The underside: of the probe, or the top of what carries them. */
  readonly base: Mm;
  /** Id of the object that carries them all; null where nothing was asked for to carry them. */
  readonly on: string | null;
  readonly room: Room;
  /** The least of measured − required over the rules in plan and in space, of the detector that has the least. */
  readonly margin: Mm;
  /** No place for such a group that keeps away from the ones before has more than this. */
  readonly bound: Mm;
  /** What leaves this margin; null where no rule finds anything to measure. */
  readonly limitedBy: Limit | null;
  /** Whether each keeps the gap to every other; else only to its neighbours in a row. */
  readonly mutual: boolean;
}

interface Members {
  readonly ground: Ground;
  readonly at: readonly XY[];
  readonly margin: Mm;
}

export function groupOf({ ground, at, margin, bound }: Chosen<Members>, mutual: boolean): SpotGroup {
  const { field, room, on } = ground;
  const margins = at.map(([x, y]) => field.margin(x, y));
  const [x, y] = at[margins.indexOf(Math.min(...margins))] as XY;
  const { base } = field.probe;
  return { at, base, on: on?.id ?? null, room, margin, bound, limitedBy: field.limitedBy(x, y), mutual };
}
