import { type ItemKind, type ItemOf, itemsOf, LIST_OF } from '../plan/kinds.ts';
import type { Plan, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { identifiedItems } from '../planfile/read/valid-parts.ts';
import { withLoad } from './carried.ts';
import type { EditResult } from './checked.ts';
import { levelChanged } from './level.ts';

/** The smallest number that makes `prefix` and it an id that nothing in the plan has: "w3". */
export function nextId(plan: Plan, prefix: string): string {
  const taken = new Set(identifiedItems(plan).map(({ id }) => id));
  let number = 1;
  while (taken.has(`${prefix}${number}`)) number += 1;
  return `${prefix}${number}`;
}

/** A thing added at the end of its list, or put in the place of the one with its id, with what stands on it. */
export function withItem<K extends ItemKind>(plan: Plan, levelId: string, kind: K, item: ItemOf[K]): EditResult {
  return withItems(plan, levelId, kind, [item]);
}

/** Several at once: all of them or none. */
export function withItems<K extends ItemKind>(
  plan: Plan,
  levelId: string,
  kind: K,
  items: readonly ItemOf[K][],
): EditResult {
  const fresh = new Map(items.map((item) => [item.id, item]));
  assert(fresh.size === items.length, 'things that are put in at once have ids of their own');
  return levelChanged(plan, levelId, (level) => {
    const before = itemsOf(level, kind);
    const kept = before.map((item) => fresh.get(item.id) ?? item);
    const there = new Set(before.map(({ id }) => id));
    const after = [...kept, ...items.filter(({ id }) => !there.has(id))];
    const same = after.length === before.length && after.every((item, index) => item === before[index]);
    return same ? level : withLoad(level, { ...level, [LIST_OF[kind]]: after }, new Set(fresh.keys()));
  });
}

/** Some values of one thing changed; what stands on it goes with it. Asserts that the level has it. */
export function itemPatched<K extends ItemKind>(
  plan: Plan,
  levelId: string,
  kind: K,
  id: string,
  patch: Partial<Omit<ItemOf[K], 'id'>>,
): EditResult {
  return levelChanged(plan, levelId, (level) => {
    const before = itemsOf(level, kind);
    assert(
      before.some((item) => item.id === id),
      `level ${levelId} has no ${kind} ${id}`,
    );
    const after = before.map((item) => (item.id === id ? { ...item, ...patch } : item));
    return withLoad(level, { ...level, [LIST_OF[kind]]: after }, new Set([id]));
  });
}

/** A detector's axis put at a point, mm; its height stays. */
export function withDetectorAt(plan: Plan, levelId: string, id: string, at: XY): EditResult {
  return itemPatched(plan, levelId, 'detector', id, { at });
}
