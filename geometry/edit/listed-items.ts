import { itemById } from '../plan/items.ts';
import { ID_PREFIX, ITEM_KINDS, type Item, type ItemKind, type ItemOf, LIST_OF } from '../plan/kinds.ts';
import type { Fixture, Level, Plan } from '../plan/model.ts';
import { checkedPlan, type EditResult } from './checked.ts';
import { uncheckedLevelEdit } from './level.ts';
import { withStreamTurned } from './stream-turn.ts';
import { withSupportedItems } from './supported-items.ts';

/** The items of a level by the list that holds them, for callers that know an item by its id alone. */

export type ItemList = (typeof LIST_OF)[ItemKind];
export const ITEM_LISTS: readonly ItemList[] = ITEM_KINDS.map((kind) => LIST_OF[kind]);
/** An item with its list. */
export type ListedItem = {
  readonly [K in ItemKind]: { readonly list: (typeof LIST_OF)[K]; readonly item: ItemOf[K] };
}[ItemKind];

/** Returns the item of a level with this id, or null. */
export function findItem(level: Level, id: string): ListedItem | null {
  const found = itemById(level, id);
  // The kind names the list and the type of its items.
  return found && ({ list: LIST_OF[found.kind], item: found.item } as ListedItem);
}

export function prefixOf(list: ItemList): string {
  const kind = ITEM_KINDS.find((each) => LIST_OF[each] === list);
  return kind ? ID_PREFIX[kind] : '';
}

/** Changes some values of one item of a level, moving what is on top of it. Returns the same level if it has no such item. */
export function withItemPatched(level: Level, id: string, patch: Readonly<Record<string, unknown>>): Level {
  const found = findItem(level, id);
  if (!found) return level;
  const items: readonly Item[] = level[found.list];
  const patched = (item: Item): Item => {
    const after = withMeasured({ ...item, ...patch }, patch);
    // A fixture is the only item with airflow.
    return found.list === 'fixtures' ? withStreamTurned(found.item, after as Fixture) : after;
  };
  const after = { ...level, [found.list]: items.map((item) => (item.id === id ? patched(item) : item)) };
  return withSupportedItems(level, after, new Set([id]));
}

/** Returns the item without the "not measured" marks of the heights and the thickness that the patch enters. */
function withMeasured(item: Item, patch: Readonly<Record<string, unknown>>): Item {
  const entered = (['bottom', 'top', 'thickness'] as const).filter(
    (key) => key in patch && !(`${key}Answered` in patch),
  );
  const gone = new Set(entered.map((key) => `${key}Answered`));
  if (!Object.keys(item).some((key) => gone.has(key))) return item;
  return Object.fromEntries(Object.entries(item).filter(([key]) => !gone.has(key))) as unknown as Item;
}

/** Adds an item at the end of its list; the caller checks the plan. */
export function uncheckedItemAdded(plan: Plan, levelId: string, list: ItemList, item: Item): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => ({ ...level, [list]: [...level[list], item] }));
}

/** `withItemPatched` on a level of a plan; the caller checks the plan. */
export function uncheckedItemPatched(
  plan: Plan,
  levelId: string,
  id: string,
  patch: Readonly<Record<string, unknown>>,
): Plan {
  return uncheckedLevelEdit(plan, levelId, (level) => withItemPatched(level, id, patch));
}

/** Returns the result of an unchecked edit, refused with the reason if the reader would refuse the plan. */
export function checkedResult(before: Plan, result: Plan | EditResult): EditResult {
  return 'ok' in result ? result : checkedPlan(before, result);
}
