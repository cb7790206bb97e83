import type { LevelModel } from '../../geometry/level/types.ts';
import { describeHeights, type HeightTexts } from '../../geometry/messages/heights.ts';
import { subjectName } from '../../geometry/messages/subject.ts';
import type { Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { LIMIT_TOLERANCE } from '../../geometry/plane/tolerances.ts';
import { type HeightInterval, heightsAt, surfaceBelow } from '../../geometry/search/heights.ts';
import type { LengthUnit } from '../../geometry/units/index.ts';

/** Steps of a height slider, mm: 1 in and 6 in; or 1 cm and 10 cm. */
const STEP: Readonly<Record<LengthUnit, { readonly one: Mm; readonly many: Mm }>> = {
  'feet-inches': { one: 25.4, many: 152.4 },
  metric: { one: 10, many: 100 },
};

/** A dragged slider snaps to a stop within this, mm. */
const CATCH: Mm = 20;

/**
 * Returns the next height up or down by key, mm: a multiple of the step, or a stop before it, so that a single step does not skip the end
 * of an allowed interval or a table top. Large steps skip stops.
 */
export function steppedHeight(
  from: Mm,
  way: 'up' | 'down',
  step: 'one' | 'many',
  unit: LengthUnit,
  stops: readonly Mm[],
): Mm {
  const size = STEP[unit][step];
  const sign = way === 'up' ? 1 : -1;
  // A height that is a multiple except for rounding counts as that multiple.
  const steps = (sign * from) / size;
  const next = sign * (Math.floor(steps + 1e-6) + 1) * size;
  if (step === 'many') return next;
  const between = stops.filter(
    (stop) => sign * (stop - from) > LIMIT_TOLERANCE && sign * (next - stop) > LIMIT_TOLERANCE,
  );
  return between.length > 0 ? sign * Math.min(...between.map((stop) => sign * stop)) : next;
}

/** Returns the height of a dragged slider, mm: the nearest stop within `CATCH`, else a multiple of the step. */
export function caughtHeight(at: Mm, unit: LengthUnit, stops: readonly Mm[]): Mm {
  const near = stops.filter((stop) => Math.abs(stop - at) <= CATCH);
  const { one } = STEP[unit];
  return (
    near.reduce<Mm | null>((a, b) => (a !== null && Math.abs(a - at) <= Math.abs(b - at) ? a : b), null) ??
    Math.round(at / one) * one
  );
}

/** The allowed heights at a place, in numbers and in words. */
export interface HeightLane {
  readonly intervals: readonly HeightInterval[];
  readonly words: readonly HeightTexts[];
  /** The carrier of a detector there, and the height of its top, mm; null for the floor. */
  readonly carrier: { readonly name: string; readonly top: Mm } | null;
}

/** Returns the allowed heights for a detector of a size with its axis at a point. */
export function heightLane(
  plan: Plan,
  model: LevelModel,
  { radius, tall }: Pick<Detector, 'radius' | 'tall'>,
  at: XY,
): HeightLane {
  const intervals = heightsAt(plan, model, { radius, tall }, at);
  const surface = surfaceBelow(model, at, radius);
  return {
    intervals,
    words: intervals.map((one) => describeHeights(one, plan, model.level)),
    carrier: surface && { name: subjectName(model.level, surface.object.id), top: surface.top },
  };
}

/** Returns whether two lanes allow the same heights and say the same. */
export function sameLane(a: HeightLane, b: HeightLane): boolean {
  return JSON.stringify(factsOf(a)) === JSON.stringify(factsOf(b));
}

const factsOf = ({ intervals, words, carrier }: HeightLane) => [
  intervals.map(({ from, to }) => [from, to]),
  words,
  carrier,
];

/** Returns whether a height is in one of the intervals, within the tolerance of a check (`LIMIT_TOLERANCE`). */
export function isAllowed({ intervals }: HeightLane, base: Mm): boolean {
  return intervals.some(({ from, to }) => base >= from - LIMIT_TOLERANCE && base <= to + LIMIT_TOLERANCE);
}

/** Returns the heights that a slider snaps to, mm: the ends of the allowed intervals, and the top of the carrier. */
export function stopsOf({ intervals, carrier }: HeightLane): readonly Mm[] {
  return [...intervals.flatMap(({ from, to }) => [from, to]), ...(carrier ? [carrier.top] : [])];
}
