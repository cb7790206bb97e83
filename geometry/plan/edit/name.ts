import { FIXTURE_NOUN } from '../../words/nouns.ts';
import type { Item, ItemKind } from '../kinds.ts';
import type { Detector, Fixture, Opening, PlanObject, RoomLabel } from '../model.ts';

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
