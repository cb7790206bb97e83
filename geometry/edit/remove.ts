import { ITEM_KINDS, type ItemKind, itemsOf, LIST_OF } from '../plan/kinds.ts';
import type { Plan } from '../plan/model.ts';
import { changedLevel, withoutReadings } from './level.ts';

/** Things taken off a level, with what cannot be without them: the openings of a wall, the readings of a detector. Ids that are not there are passed over. */
export function withoutItems(plan: Plan, levelId: string, ids: readonly string[]): Plan {
  const gone = new Set(ids);
  const goes = (item: { readonly id: string; readonly wall?: string }) =>
    gone.has(item.id) || (item.wall !== undefined && gone.has(item.wall));
  const detectors = new Set<string>();
  const next = changedLevel(plan, levelId, (level) => {
    for (const { id } of level.detectors) if (gone.has(id)) detectors.add(id);
    const lists = ITEM_KINDS.flatMap((kind) => {
      const items = itemsOf<ItemKind>(level, kind);
      return items.some(goes) ? [[LIST_OF[kind], items.filter((item) => !goes(item))] as const] : [];
    });
    return lists.length === 0 ? level : { ...level, ...Object.fromEntries(lists) };
  });
  return withoutReadings(next, detectors);
}
