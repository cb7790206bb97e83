import { ITEM_KINDS, type Item, type ItemKind, itemsOf, LIST_OF } from '../plan/kinds.ts';
import type { Level, Mm, Plan, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { distance } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import type { EditResult } from './checked.ts';
import { checkedLevelEdit } from './level.ts';
import { withItemsMoved, withWalls } from './move-items.ts';

/**
 * Moves items by dx, dy, mm. Ends of other walls that meet a moved wall follow, so that rooms stay closed; openings
 * move with their wall, and an opening moved alone slides along it. Refused if a wall would become too short for one
 * of its openings.
 */
export function movedItems(plan: Plan, levelId: string, ids: readonly string[], dx: Mm, dy: Mm): EditResult {
  if (dx === 0 && dy === 0) return { ok: true, plan };
  return checkedLevelEdit(plan, levelId, (level) =>
    withIdentityKept(level, withItemsMoved(level, new Set(ids), [dx, dy])),
  );
}

/**
 * Moves both ends of a wall, and every end of other walls that meets them. Openings keep their position on the
 * page as far as their wall still extends there; refused if one no longer fits.
 */
export function withWallEnds(plan: Plan, levelId: string, wallId: string, from: XY, to: XY): EditResult {
  return checkedLevelEdit(plan, levelId, (level) => withIdentityKept(level, wallEndsMoved(level, wallId, from, to)));
}

/**
 * Moves both ends at once: if they moved one after the other, an end that reaches the other end's old corner would drag
 * the neighbors of that corner along.
 */
export function wallEndsMoved(level: Level, wallId: string, from: XY, to: XY): Level {
  const laid = level.walls.find(({ id }) => id === wallId);
  assert(laid !== undefined, `level ${level.id} has no wall ${wallId}`);
  const follow = (end: XY): XY => {
    if (distance(end, laid.from) <= JOINED) return from;
    return distance(end, laid.to) <= JOINED ? to : end;
  };
  const walls = level.walls.map((wall) =>
    wall === laid ? { ...wall, from, to } : { ...wall, from: follow(wall.from), to: follow(wall.to) },
  );
  return withWalls(level, walls);
}

/** Restores the identity of items whose values did not change, and of lists with only such items. */
export function withIdentityKept(before: Level, after: Level): Level {
  const lists = ITEM_KINDS.flatMap((kind) => {
    const [was, now] = [itemsOf<ItemKind>(before, kind), itemsOf<ItemKind>(after, kind)];
    if (was === now) return [];
    const old = new Map<string, Item>(was.map((item) => [item.id, item]));
    const next = now.map((item) => {
      const one = old.get(item.id);
      return one && sameValues(one, item) ? one : item;
    });
    const same = next.length === was.length && next.every((item, index) => item === was[index]);
    return [[LIST_OF[kind], same ? was : next] as const];
  });
  const all: Level = { ...after, ...Object.fromEntries(lists) };
  return lists.every(([key]) => all[key] === before[key]) && sameValues(before, all) ? before : all;
}

/** Compares keys and values; points by their coordinates. */
function sameValues(a: object, b: object): boolean {
  const other = new Map(Object.entries(b));
  const entries = Object.entries(a);
  return entries.length === other.size && entries.every(([key, value]) => sameValue(value, other.get(key)));
}

function sameValue(a: unknown, b: unknown): boolean {
  if (!Array.isArray(a) || !Array.isArray(b)) return Object.is(a, b);
  return a === b || (a.length === 2 && b.length === 2 && typeof a[0] === 'number' && a[0] === b[0] && a[1] === b[1]);
}
