import { itemName } from '../plan/items.ts';
import type { Deg, Level, Mm, Opening, Plan, XY } from '../plan/model.ts';
import { roundCoordinate } from '../plane/point.ts';
import { type Copies, copiedInto } from './duplicate.ts';
import { nextId } from './item.ts';
import { levelChanged, levelOf } from './level.ts';

/** Copies one after another in a straight line. */
export interface Row {
  /** How many more there will be: a whole number from 1. */
  readonly more: number;
  /** From each to the next, middle to middle, mm, above 0. */
  readonly spacing: Mm;
  /** Clockwise on screen, 0 along +x. An opening goes along its wall, to the side that this points to. */
  readonly direction: Deg;
}

/** More at once is a slip of the hand. */
const MOST = 100;

/**
 * Things copied again and again in a row, as one edit; the ids are those of the copies, nearest first. What goes along with a
 * copy is as for `duplicatedItems`. Refused where a copy of an opening would not fit on its wall or would stand in another one.
 */
export function itemsInRow(plan: Plan, levelId: string, ids: readonly string[], row: Row): Copies {
  const { more, spacing, direction } = row;
  if (!Number.isInteger(more) || more < 1 || more > MOST)
    return { ok: false, reason: `A row of ${more} more cannot be set out. Write a whole number from 1 to ${MOST}.` };
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
    const copy = { ...slidOpening(level, opening, far, radians), id: nextId(next, 'o') };
    if (standsInAnother(level, copy)) {
      return {
        ok: false,
        reason: `${itemName('opening', copy)} would stand in another one. Give the row more spacing.`,
      };
    }
    const done = levelChanged(next, levelId, (each) => ({ ...each, openings: [...each.openings, copy] }));
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

/** Side by side is no overlap: only a share of more than a rounding error is. */
function standsInAnother(level: Level, { wall, offset, width }: Opening): boolean {
  return level.openings.some(
    (other) =>
      other.wall === wall && offset + width > other.offset + 1e-6 && offset < other.offset + other.width - 1e-6,
  );
}
