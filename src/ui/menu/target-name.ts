import type { ListedItem } from '../../../geometry/edit/listed-items.ts';
import { capital, counted, FIXTURE_NOUN } from '../../../geometry/messages/index.ts';
import type { Target } from '../../commands/command.ts';

/** Returns the target of a command in a few words. */
export function targetName({ found, one, room, at }: Target): string {
  if (one) return itemHeading(one);
  if (found.length > 1) return `${counted(found.length, 'thing')} selected`;
  if (room) return room.label?.name.trim() || 'This room';
  return at ? 'The plan here' : 'The plan';
}

export function itemHeading(found: ListedItem): string {
  switch (found.list) {
    case 'walls':
      return 'Wall';
    case 'openings':
      return capital(found.item.kind);
    case 'rooms':
      return found.item.name.trim() || 'Room';
    case 'fixtures':
      return found.item.name.trim() || capital(FIXTURE_NOUN[found.item.kind]);
    case 'objects':
      return found.item.name.trim() || 'Object';
    case 'detectors':
      return `Detector ${found.item.label}`.trim();
  }
}
