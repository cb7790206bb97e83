import type { Wall } from '../../geometry/plan/model.ts';
import type { Point } from './geos.ts';
import { apart, meeting, minus, nearest, offSegment, plus, unit, wedge } from './plane.ts';

/*
 * What is drawn up to half an inch short of another wall is led on to it (geometry/README.md, "How a level is built", 1). Decided for
 * each end and each other wall by these two alone.
 */

/** How near an end has to be to be led on, mm: half an inch. */
const NEAR = 12.7;
/** How near counts as meeting already, and how far out a crossing may lie, mm: an inch. */
const INCH = 25.4;
/** Points this near are one, mm. */
const ONE = 0.01;
/** Lines whose angle has a smaller sine run side by side. */
const SIDE_BY_SIDE = 1e-3;

/** A short piece of wall from an end to another wall. */
export interface Join {
  readonly wall: Wall;
  /** Straight to the nearest point, not to the crossing of the two lines: it fills the gap, and makes no joints. */
  readonly across: boolean;
}

/** The pieces that lead ends on. */
export function joinsOf(walls: readonly Wall[]): Join[] {
  return walls.flatMap((wall) =>
    [wall.from, wall.to].flatMap((end) => {
      const far = end === wall.from ? wall.to : wall.from;
      return walls.flatMap((other) => (other === wall ? [] : led(wall, end, far, other)));
    }),
  );
}

function led(wall: Wall, end: Point, far: Point, other: Wall): Join[] {
  const gap = offSegment(end, other.from, other.to);
  if (gap <= ONE || gap > NEAR || meetsBefore(end, far, other)) return [];
  const crossing = crossingOf(wall, other);
  const to = crossing && isMeant(crossing, end, other) ? crossing : nearest(end, other.from, other.to);
  return apart(end, to) <= ONE ? [] : [{ wall: { ...wall, from: end, to }, across: to !== crossing }];
}

/** Whether the last inch of a wall meets the other: it was drawn a little too far. */
function meetsBefore(end: Point, far: Point, other: Wall): boolean {
  const start = apart(end, far) <= INCH ? far : plus(end, unit(minus(far, end)), INCH);
  const crossing = crossingOf({ from: start, to: end }, other);
  const onBoth =
    crossing && offSegment(crossing, start, end) <= ONE && offSegment(crossing, other.from, other.to) <= ONE;
  const tips = [other.from, other.to].some((tip) => offSegment(tip, start, end) <= ONE);
  return onBoth || tips || offSegment(start, other.from, other.to) <= ONE;
}

function crossingOf(one: Pick<Wall, 'from' | 'to'>, two: Pick<Wall, 'from' | 'to'>): Point | null {
  const [u, v] = [unit(minus(one.to, one.from)), unit(minus(two.to, two.from))];
  return Math.abs(wedge(u, v)) < SIDE_BY_SIDE ? null : meeting(one.from, u, two.from, v);
}

/** Whether a crossing is where the end was meant to go: on the other wall, or a little past the tip that the end is near. */
function isMeant(crossing: Point, end: Point, { from, to }: Wall): boolean {
  if (apart(crossing, end) > INCH) return false;
  if (offSegment(crossing, from, to) <= ONE) return true;
  const tip = apart(end, from) <= apart(end, to) ? from : to;
  return apart(end, tip) <= NEAR && apart(crossing, tip) <= INCH;
}
