import type { Detector, Fixture, Level, Opening, PlanObject, RoomLabel, Wall } from './model.ts';

/** The type of the items of a level, by kind. "Item" is any of them. */
export interface ItemOf {
  readonly wall: Wall;
  readonly opening: Opening;
  readonly room: RoomLabel;
  readonly fixture: Fixture;
  readonly object: PlanObject;
  readonly detector: Detector;
}
export type ItemKind = keyof ItemOf;
export type Item = ItemOf[ItemKind];

/** The key of a level that lists each kind. */
export const LIST_OF = {
  wall: 'walls',
  opening: 'openings',
  room: 'rooms',
  fixture: 'fixtures',
  object: 'objects',
  detector: 'detectors',
} as const satisfies Record<ItemKind, keyof Level>;
export const ITEM_KINDS = [
  'wall',
  'opening',
  'room',
  'fixture',
  'object',
  'detector',
] as const satisfies readonly ItemKind[];

/** Prefix of the ids of each kind: w1, o1, r1, f1, t1, d1. */
export const ID_PREFIX: Readonly<Record<ItemKind, string>> = {
  wall: 'w',
  opening: 'o',
  room: 'r',
  fixture: 'f',
  object: 't',
  detector: 'd',
};

/** Returns the items of one kind, in file order. */
export function itemsOf<K extends ItemKind>(level: Level, kind: K): readonly ItemOf[K][] {
  // `ItemOf` and `LIST_OF` agree with the model; the compiler cannot relate a type parameter through both.
  return level[LIST_OF[kind]] as readonly Item[] as readonly ItemOf[K][];
}
