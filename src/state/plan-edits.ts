/** The items of a level by the list that holds them, for the app: the edits themselves are those of `geometry/edit/index.ts`. */

import { checkedPlan, type EditResult, type Item, type ItemKind, LIST_OF } from '../../geometry/edit/index.ts';
import { uncheckedLevelEdit } from '../../geometry/edit/level.ts';
import { withSupportedItems } from '../../geometry/edit/supported-items.ts';
import { ID_PREFIX, ITEM_KINDS, type ItemOf, itemsOf } from '../../geometry/plan/kinds.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';

export type { Item } from '../../geometry/edit/index.ts';
export { uncheckedLevelEdit as withLevel } from '../../geometry/edit/level.ts';

export type ItemList = (typeof LIST_OF)[ItemKind];
export const ITEM_LISTS: readonly ItemList[] = ITEM_KINDS.map((kind) => LIST_OF[kind]);
export type FoundItem = {
  readonly [K in ItemKind]: { readonly list: (typeof LIST_OF)[K]; readonly item: ItemOf[K] };
}[ItemKind];

/** The item of a level that has this id; null when none has. */
export function findItem(level: Level, id: string): FoundItem | null {
  for (const kind of ITEM_KINDS) {
    const item = itemsOf<ItemKind>(level, kind).find((each) => each.id === id);
    // The list names the type of its items.
    if (item) return { list: LIST_OF[kind], item } as FoundItem;
  }
  return null;
}

export function prefixOf(list: ItemList): string {
  const kind = ITEM_KINDS.find((each) => LIST_OF[each] === list);
  return kind ? ID_PREFIX[kind] : '';
}

/** An item at the end of its list. */
export function withItem(plan: Plan, levelId: string, list: ItemList, item: Item): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => ({ ...level, [list]: [...level[list], item] }));
}

/** Some values of one item changed, and what stands on it with it; the plan itself where the level has no such item. */
export function withPatch(plan: Plan, levelId: string, id: string, patch: Readonly<Record<string, unknown>>): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => {
    const found = findItem(level, id);
    if (!found) return level;
    const items: readonly Item[] = level[found.list];
    const after = { ...level, [found.list]: items.map((item) => (item.id === id ? { ...item, ...patch } : item)) };
    return withSupportedItems(level, after, new Set([id]));
  });
}

/** What an edit came to: a plan that the reader would not read back is refused with the reason. */
export function settledEdit(before: Plan, result: Plan | EditResult): EditResult {
  return 'ok' in result ? result : checkedPlan(before, result);
}
