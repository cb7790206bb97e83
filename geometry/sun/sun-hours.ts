import type { LevelModel } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { bodyDistance, ringBody } from '../plane/body.ts';
import type { Heights } from './sun-floor.ts';
import { openingLight } from './swept.ts';
import type { SunTimes } from './times.ts';

/** Length of the spans of time that are tested, ms. */
const SPAN = 600_000;

/** A span of time, milliseconds since 1970. */
export interface SunSpan {
  readonly start: number;
  readonly end: number;
}

/** The place for which the hours of sun are computed. */
export interface Spot {
  readonly at: XY;
  readonly heights: Heights;
  /** Light within this distance of the axis counts, mm. */
  readonly reach: Mm;
}

/**
 * Returns when direct sun through an opening comes near to a spot, in joined spans of ten minutes; at either end a span may be too long by
 * less than that. Yields after each span of ten minutes, so that a page stays responsive.
 */
export function* sunHoursSteps(
  model: LevelModel,
  times: SunTimes,
  opening: string,
  { at, heights, reach }: Spot,
): Generator<void, readonly SunSpan[]> {
  const spans: SunSpan[] = [];
  for (let { start } = times; start < times.end; start += SPAN) {
    const end = Math.min(times.end, start + SPAN);
    const isNear = openingLight(model, { ...times, start, end }, heights, opening).some(
      (ring) => bodyDistance(ringBody(ring), ...at) < reach,
    );
    const last = spans[spans.length - 1];
    if (isNear && last?.end === start) spans[spans.length - 1] = { start: last.start, end };
    else if (isNear) spans.push({ start, end });
    yield;
  }
  return spans;
}
