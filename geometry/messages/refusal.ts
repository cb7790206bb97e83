import type { Level, Mm, Opening, Plan } from '../plan/model.ts';
import { openingMisfit } from '../snap/opening-fit.ts';
import { formatLength } from '../units/index.ts';

type Unit = Plan['display']['length'];

/**
 * Functions that return why typed numbers do not describe a possible item, and what to do; "" if they do. A broken rule
 * is not refused here: that is a verdict.
 */

/** Checks an opening: within its wall, not over another, sill below head, head below the ceiling. */
export function openingRefusal(level: Level, opening: Opening, unit: Unit): string {
  const { kind: noun } = opening;
  const length = (mm: Mm) => formatLength(mm, unit);
  if (opening.width <= 0) return 'The width must be more than 0.';
  if (opening.offset < 0) return `The ${noun} would begin ${length(-opening.offset)} before its wall. Write 0 or more.`;
  const misfit = openingMisfit(level, opening);
  if (misfit?.kind === 'wall-too-short') {
    const past = length(misfit.needs - misfit.wall);
    return `The ${noun} would reach ${past} past the end of its wall. Slide it back or make it narrower.`;
  }
  if (misfit) {
    return `The ${noun} would lie ${length(misfit.by)} over a ${misfit.other.kind}. Slide it away or make it narrower.`;
  }
  if (opening.top <= opening.bottom) return 'The head must be above the sill. Raise the head or lower the sill first.';
  if (opening.top > level.ceiling) {
    return `The head would stand ${length(opening.top - level.ceiling)} above the ceiling. Lower it, or raise the ceiling of the level first.`;
  }
  return '';
}

/**
 * Returns why an opening that an edit moved (or whose wall it moved) is not possible; "" if all are. Earlier errors are
 * ignored.
 */
export function openingsRefusal(before: Level, after: Level, unit: Unit): string {
  const unchanged = new Set<unknown>([...before.openings, ...before.walls]);
  for (const opening of after.openings) {
    const wall = after.walls.find(({ id }) => id === opening.wall);
    if (unchanged.has(opening) && unchanged.has(wall)) continue;
    const refusal = openingRefusal(after, opening, unit);
    if (refusal) return refusal;
  }
  return '';
}

/** Checks the heights of an item above the floor: bottom below top, top below the ceiling. */
export function heightsRefusal(bottom: Mm, top: Mm, ceiling: Mm, unit: Unit): string {
  if (top < bottom) {
    return `The top would be ${formatLength(bottom - top, unit)} below the underside. Change the other one first.`;
  }
  if (top > ceiling) {
    return `It would stand ${formatLength(top - ceiling, unit)} above the ceiling. Lower it, or raise the ceiling of the level first.`;
  }
  return '';
}

/** Outside this range of thickness the unit was mistyped, mm. */
const WALL = { thinnest: 6, thickest: 2000 } as const;

/** Checks the thickness of a wall, mm. */
export function thicknessRefusal(thickness: Mm, unit: Unit): string {
  if (thickness >= WALL.thinnest && thickness <= WALL.thickest) return '';
  return `A wall is ${formatLength(WALL.thinnest, unit, 'up')} to ${formatLength(WALL.thickest, unit, 'down')} thick. Check the unit.`;
}

/** Checks that a size is positive. */
export function sizeRefusal(size: Mm): string {
  return size > 0 ? '' : 'The size must be more than 0. To remove it, delete it.';
}
