import { distance } from '../plane/point.ts';
import type { Mm } from '../plane/types.ts';
import { ITEM_KINDS, type Item, type ItemKind, type ItemOf, itemsOf } from './kinds.ts';
import type { Detector, Fixture, Level, Opening, PlanObject, RoomLabel, Wall } from './model.ts';
import { FIXTURE_NOUN } from './nouns.ts';

/** An item with its kind. */
export type FoundItem = { readonly [K in ItemKind]: { readonly kind: K; readonly item: ItemOf[K] } }[ItemKind];

/** Returns the item of a level with this id, or null. */
export function itemById(level: Level, id: string): FoundItem | null {
  for (const kind of ITEM_KINDS) {
    const item = itemsOf<ItemKind>(level, kind).find((each) => each.id === id);
    // `itemsOf` pairs each kind with its item type.
    if (item) return { kind, item } as FoundItem;
  }
  return null;
}

/** Returns the name of an item for the start of a sentence on screen: "The window", "Desk", "Detector A1". */
export function itemName(kind: ItemKind, item: Item): string {
  // The casts are safe because `kind` determines the type of `item`.
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

/** Returns the length of the center-line, mm. */
export function wallLength(wall: Wall): Mm {
  return distance(wall.from, wall.to);
}

/**
 * The greatest height that a detector may reach, 72 in, in mm. Things at this height or above are overhead and drawn with
 * dashed lines.
 */
const OVERHEAD: Mm = 1828.8;

/** Returns whether an item is overhead: its underside is at 72 in or above. */
export function isOverhead({ bottom }: { readonly bottom: Mm }): boolean {
  return bottom >= OVERHEAD;
}

/**
 * The default detector, mm: a charcoal canister 4 in across and 1 in tall, its underside 30 in above the floor. The commands
 * `area` and `spots` use it if no other is given. Common practice, no published source.
 */
export const USUAL_DETECTOR = { radius: 50.8, tall: 25.4, base: 762 } as const;
