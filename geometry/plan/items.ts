import { distance } from '../plane/point.ts';
import type { Mm } from '../plane/types.ts';
import { ITEM_KINDS, type Item, type ItemKind, type ItemOf, itemsOf } from './kinds.ts';
import type { Detector, Fixture, Level, Opening, PlanObject, RoomLabel, Wall } from './model.ts';
import { FIXTURE_NOUN } from './nouns.ts';

/** A thing with its kind. */
export type FoundItem = { readonly [K in ItemKind]: { readonly kind: K; readonly item: ItemOf[K] } }[ItemKind];

/** The thing of a level that has this id; null when none has. */
export function itemById(level: Level, id: string): FoundItem | null {
  for (const kind of ITEM_KINDS) {
    const item = itemsOf<ItemKind>(level, kind).find((each) => each.id === id);
    // The list names the type of its items.
    if (item) return { kind, item } as FoundItem;
  }
  return null;
}

/** What a thing is called at the start of a sentence on screen, where its id says nothing: "The window", "Desk", "Detector A1". */
export function itemName(kind: ItemKind, item: Item): string {
  // The kind says which of the types the item is.
  switch (kind) {
    case 'wall':
      return 'The wall';
    case 'opening':
      return `The ${(item as Opening).kind}`;
    case 'room':
      return (item as RoomLabel).name || 'The room name';
    case 'fixture':
      return (item as Fixture).name || `The ${FIXTURE_NOUN[(item as Fixture).kind] ?? 'fixture'}`;
    case 'object':
      return (item as PlanObject).name || 'The object';
    case 'detector':
      return (item as Detector).label ? `Detector ${(item as Detector).label}` : 'The detector';
  }
}

/** Length of the centre-line, mm. */
export function wallLength(wall: Wall): Mm {
  return distance(wall.from, wall.to);
}
