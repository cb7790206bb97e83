import { ITEM_KINDS, type ItemKind, type ItemOf, itemsOf, LIST_OF } from '../plan/kinds.ts';
import type { Plan, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import type { EditResult } from './checked.ts';
import { checkedLevelEdit, uncheckedLevelEdit, withoutRecordsOf } from './level.ts';
import { withItemPatched } from './listed-items.ts';
import { withSupportedItems } from './supported-items.ts';

/** Adds an item at the end of its list, or replaces the one with its id, moving what is on top of it. */
export function withItem<K extends ItemKind>(plan: Plan, levelId: string, kind: K, item: ItemOf[K]): EditResult {
  return withItems(plan, levelId, kind, [item]);
}

/** Adds or replaces several items at once: all or none. */
export function withItems<K extends ItemKind>(
  plan: Plan,
  levelId: string,
  kind: K,
  items: readonly ItemOf[K][],
): EditResult {
  const fresh = new Map(items.map((item) => [item.id, item]));
  assert(fresh.size === items.length, 'things that are put in at once have ids of their own');
  return checkedLevelEdit(plan, levelId, (level) => {
    const before = itemsOf(level, kind);
    const replaced = before.map((item) => fresh.get(item.id) ?? item);
    const there = new Set(before.map(({ id }) => id));
    const after = [...replaced, ...items.filter(({ id }) => !there.has(id))];
    const same = after.length === before.length && after.every((item, index) => item === before[index]);
    return same ? level : withSupportedItems(level, { ...level, [LIST_OF[kind]]: after }, new Set(fresh.keys()));
  });
}

/** Changes some values of one item, moving what is on top of it. Throws if the level does not have it. */
export function itemPatched<K extends ItemKind>(
  plan: Plan,
  levelId: string,
  kind: K,
  id: string,
  patch: Partial<Omit<ItemOf[K], 'id'>>,
): EditResult {
  return checkedLevelEdit(plan, levelId, (level) => {
    const before = itemsOf(level, kind);
    assert(
      before.some((item) => item.id === id),
      `level ${levelId} has no ${kind} ${id}`,
    );
    return withItemPatched(level, id, patch);
  });
}

/** Moves a detector's axis to a point, mm; its height is unchanged. */
export function withDetectorAt(plan: Plan, levelId: string, id: string, at: XY): EditResult {
  return itemPatched(plan, levelId, 'detector', id, { at });
}

/**
 * Removes items from a level, with what depends on them: the openings of a wall, the readings of a detector. Unknown
 * ids are ignored.
 */
export function withoutItems(plan: Plan, levelId: string, ids: readonly string[]): Plan {
  const gone = new Set(ids);
  const goes = (item: { readonly id: string; readonly wall?: string }) =>
    gone.has(item.id) || (item.wall !== undefined && gone.has(item.wall));
  const detectors = new Set<string>();
  const next = uncheckedLevelEdit(plan, levelId, (level) => {
    for (const { id } of level.detectors) if (gone.has(id)) detectors.add(id);
    const lists = ITEM_KINDS.flatMap((kind) => {
      const items = itemsOf<ItemKind>(level, kind);
      return items.some(goes) ? [[LIST_OF[kind], items.filter((item) => !goes(item))] as const] : [];
    });
    return lists.length === 0 ? level : { ...level, ...Object.fromEntries(lists) };
  });
  return withoutRecordsOf(next, detectors);
}
