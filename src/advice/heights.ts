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
 * Returns the next height up or down by key, mm: a whole step, or a stop that lies before it, so that no end of what is allowed and no
 * table top is stepped over. `many` steps go past stops.
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
  // Rounding must not make a whole step of nothing.
  const steps = (sign * from) / size;
  const next = sign * (Math.floor(steps + 1e-6) + 1) * size;
  if (step === 'many') return next;
  const between = stops.filter(
    (stop) => sign * (stop - from) > LIMIT_TOLERANCE && sign * (next - stop) > LIMIT_TOLERANCE,
  );
  return between.length > 0 ? sign * Math.min(...between.map((stop) => sign * stop)) : next;
}

/** Returns the height at which a dragged slider stands, mm: a stop that is near, else a whole step. */
export function caughtHeight(at: Mm, unit: LengthUnit, stops: readonly Mm[]): Mm {
  const near = stops.filter((stop) => Math.abs(stop - at) <= CATCH);
  const { one } = STEP[unit];
  return (
    near.reduce<Mm | null>((a, b) => (a !== null && Math.abs(a - at) <= Math.abs(b - at) ? a : b), null) ??
    Math.round(at / one) * one
  );
}

/** The heights that are allowed at a place, in numbers and in words. */
export interface HeightLane {
  readonly intervals: readonly HeightInterval[];
  readonly words: readonly HeightTexts[];
  /** What carries a detector there, and its top, mm; null for the floor. */
  readonly carrier: { readonly name: string; readonly top: Mm } | null;
}

/** For a detector of a size with its axis at a point. */
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

/** Whether a height lies in one of the intervals; a limit may be missed by the 0.1 mm that a check forgives. */
export function isAllowed({ intervals }: HeightLane, base: Mm): boolean {
  return intervals.some(({ from, to }) => base >= from - LIMIT_TOLERANCE && base <= to + LIMIT_TOLERANCE);
}

/** Heights at which a slider stops by itself: the ends of what is allowed, and the top of what carries. */
export function stopsOf({ intervals, carrier }: HeightLane): readonly Mm[] {
  return [...intervals.flatMap(({ from, to }) => [from, to]), ...(carrier ? [carrier.top] : [])];
}
