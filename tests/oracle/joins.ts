import type { Wall } from '../../geometry/plan/model.ts';
import type { Point } from './geos.ts';
import { apart, meeting, minus, nearest, offSegment, plus, unit, wedge } from './plane.ts';

/*
 * An end drawn up to half an inch short of another wall is extended to it (geometry/README.md, "How a level is built", 1). This is decided
 * for each end and each other wall from these two alone.
 */

/** An end within this distance of another wall is extended, mm: half an inch. */
const NEAR = 12.7;
/** Walls that meet within this distance of the end count as meeting already, and a crossing may be this far away, mm: an inch. */
const INCH = 25.4;
/** Points closer than this are the same point, mm. */
const ONE = 0.01;
/** Lines at an angle with a smaller sine are parallel. */
const SIDE_BY_SIDE = 1e-3;

/** A short piece of wall from an end to another wall. */
export interface Join {
  readonly wall: Wall;
  /** Whether it goes straight to the nearest point and not to the crossing of the two lines: then it fills the gap and makes no joints. */
  readonly across: boolean;
}

/** Returns the pieces that extend ends. */
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

/** Returns whether the last inch of a wall meets the other wall: it was drawn a little too far. */
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

/** Returns whether a crossing is the intended end: on the other wall, or a little past the tip that the end is near. */
function isMeant(crossing: Point, end: Point, { from, to }: Wall): boolean {
  if (apart(crossing, end) > INCH) return false;
  if (offSegment(crossing, from, to) <= ONE) return true;
  const tip = apart(end, from) <= apart(end, to) ? from : to;
  return apart(end, tip) <= NEAR && apart(crossing, tip) <= INCH;
}
