import { itemName } from '../plan/items.ts';
import type { Deg, Level, Mm, Opening, Plan, XY } from '../plan/model.ts';
import { roundCoordinate } from '../plane/point.ts';
import { copyOfOpening } from './copied-answers.ts';
import { type Copies, copiedInto } from './duplicate.ts';
import { nextId } from './free-id.ts';
import { checkedLevelEdit, levelOf } from './level.ts';

/** Copies in a straight row. */
export interface ItemRow {
  /** The number of copies, from 1. */
  readonly more: number;
  /** Distance between successive middles, mm, above 0. */
  readonly spacing: Mm;
  /** Clockwise on screen, 0 along +x. For an opening it selects the direction along its wall. */
  readonly direction: Deg;
}

/** More copies at once are a typing error. */
const MOST_COPIES = 100;

/**
 * Copies items repeatedly in a row, as one edit; the ids are those of the copies, nearest first. Otherwise as
 * `duplicatedItems`. Refused if a copy of an opening does not fit on its wall or overlaps another one.
 */
export function itemsInRow(plan: Plan, levelId: string, ids: readonly string[], row: ItemRow): Copies {
  const { more, spacing, direction } = row;
  if (!Number.isInteger(more) || more < 1 || more > MOST_COPIES)
    return {
      ok: false,
      reason: `A row of ${more} more cannot be placed. Write a whole number from 1 to ${MOST_COPIES}.`,
    };
  if (!(spacing > 0)) return { ok: false, reason: 'The spacing is from one middle to the next. Write more than 0.' };
  const level = levelOf(plan, levelId);
  const radians = (direction * Math.PI) / 180;
  const step: XY = [Math.cos(radians) * spacing, Math.sin(radians) * spacing];
  const openings = level.openings.filter(({ id, wall }) => ids.includes(id) && !ids.includes(wall));
  const others = ids.filter((id) => !openings.some((opening) => opening.id === id));
  let next = plan;
  const made: string[] = [];
  for (let number = 1; number <= more; number++) {
    const by: XY = [roundCoordinate(step[0] * number), roundCoordinate(step[1] * number)];
    const copies = copiedInto(next, levelId, level, others, by);
    if (!copies.ok) return copies;
    const slid = openingsAlong(copies.plan, levelId, openings, spacing * number, radians);
    if (!slid.ok) return slid;
    next = slid.plan;
    made.push(...copies.ids, ...slid.ids);
  }
  return { ok: true, plan: next, ids: made };
}

function openingsAlong(plan: Plan, levelId: string, openings: readonly Opening[], far: Mm, radians: number): Copies {
  let next = plan;
  const ids: string[] = [];
  for (const opening of openings) {
    const level = levelOf(next, levelId);
    const copy = { ...copyOfOpening(slidOpening(level, opening, far, radians)), id: nextId(next, 'o') };
    if (overlapsAnother(level, copy)) {
      return {
        ok: false,
        reason: `${itemName('opening', copy)} would stand in another one. Give the row more spacing.`,
      };
    }
    const done = checkedLevelEdit(next, levelId, (each) => ({ ...each, openings: [...each.openings, copy] }));
    if (!done.ok) return done;
    next = done.plan;
    ids.push(copy.id);
  }
  return { ok: true, plan: next, ids };
}

function slidOpening(level: Level, opening: Opening, far: Mm, radians: number): Opening {
  const wall = level.walls.find(({ id }) => id === opening.wall);
  if (!wall) return opening;
  const [dx, dy] = [wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]];
  const ahead = dx * Math.cos(radians) + dy * Math.sin(radians) >= 0;
  return { ...opening, offset: roundCoordinate(opening.offset + (ahead ? far : -far)) };
}

/** Adjacent openings do not overlap: an overlap is more than a rounding error. */
function overlapsAnother(level: Level, { wall, offset, width }: Opening): boolean {
  return level.openings.some(
    (other) =>
      other.wall === wall && offset + width > other.offset + 1e-6 && offset < other.offset + other.width - 1e-6,
  );
}
