import type { Notice } from '../level/types.ts';
import type { Level } from '../plan/model.ts';
import { listed } from '../plan/nouns.ts';
import type { Mm } from '../plane/types.ts';
import { formatLength, formatMeasured, type LengthUnit } from '../units/index.ts';

/** Returns a length in words; one that rounds to nothing as "less than 1/8 in". */
function lengthWords(length: Mm, unit: LengthUnit): string {
  const words = formatMeasured(length, unit);
  return words === formatMeasured(0, unit) ? `less than ${formatLength(1, unit, 'up')}` : words;
}

/** Describes a notice about the drawing: what it is, with its length, then what to do. */
export function describeNotice(notice: Notice, unit: LengthUnit, level?: Level): string {
  const length = notice.length === null ? '' : lengthWords(notice.length, unit);
  const names = notice.ids
    .map((id) => level?.rooms.find((room) => room.id === id)?.name.trim())
    .filter((name): name is string => Boolean(name))
    .map((name) => `"${name}"`);
  switch (notice.kind) {
    case 'gap-closed':
      return `Two walls stop ${length} short of each other. The gap counts as closed. Join the ends if that is right, pull them apart if it is not.`;
    case 'gap-open':
      return `Two walls stop ${length} short of each other, so the room stays open. Draw one end onto the other.`;
    case 'overshoot':
      return `A wall runs ${length} past the wall that it meets. It counts as drawn. Pull it back to the wall.`;
    case 'walls-overlap':
      return `${notice.ids.length > 2 ? notice.ids.length : 'Two'} walls lie on top of each other${length && ` for ${length}`}. Each counts in full. Delete or shorten one, or make one wall of them.`;
    case 'walls-crowded':
      return `${notice.ids.length} walls meet at one point. The area around it counts as wall. Delete those that are not there.`;
    case 'zero-length-wall':
      return 'A wall has no length. Delete it, or pull one end away.';
    case 'label-outside-rooms':
      return `${names[0] ?? 'A room name'} does not lie in a closed room. Move it into its room, or close the walls around it.`;
    case 'labels-share-room':
      return `${listed(names) || 'Two names'} stand in one room. The first one counts. Delete the others, or draw the wall between.`;
    case 'open-passage-outside':
      return 'A passage leads outdoors and counts as an exterior door. Draw the door that closes it.';
    case 'unlabelled-room':
      return 'A room has no use yet. Enter what it is used for: until then nothing in it can turn clear.';
  }
}
