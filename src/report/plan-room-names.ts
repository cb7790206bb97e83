/** Room names with floor area, size, and why a room is out, each where there is room for it. */

import type { Room } from '../../geometry/level/types.ts';
import { capital, ROOM_USE_NOUN } from '../../geometry/messages/index.ts';
import type { RoomRegion } from '../../geometry/region/types.ts';
import { formatArea } from '../../geometry/units/index.ts';
import { drawLabel, type Label, labelForms, labelSlot, makeLabel } from './label.ts';
import { type Ground, MANNERS, type Placer } from './placer.ts';
import { gridPlaces, insideRings, type Names } from './places.ts';
import { roomSizeWords } from './plan-dimensions.ts';
import { SMALL_RATIO, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { shortened } from './text.ts';
import { toPaper, type View } from './view.ts';

/** A longer name is shortened on the drawing; the tables have it whole. */
const NAME_WIDTH = 50;
const NAME = { size: TYPE_MM.lead, weight: 'bold' } as const;
const SMALL_NAME = { size: TYPE_MM.fine, weight: 'bold' } as const;
const FIGURE = { size: TYPE_MM.small } as const;
const SMALL_FIGURE = { size: TYPE_MM.fine } as const;

export function placeRoomNames(matter: SubjectMatter, view: View, placer: Placer): Names {
  const found = matter.region.rooms.map((region) => ({
    title: roomTitle(region.room),
    drawn: placeInRoom(roomForms(matter, region, view), region.room, view, placer),
  }));
  return {
    drawn: found.map(({ drawn }) => drawn ?? '').join(''),
    leftOff: found.filter(({ drawn }) => drawn === null).map(({ title }) => title),
  };
}

export function roomTitle({ label }: Room): string {
  return label?.name.trim() || (label ? capital(ROOM_USE_NOUN[label.use]) : 'Room without a name');
}

/** From the fullest to the shortest. */
function roomForms({ plan }: SubjectMatter, { room, barred }: RoomRegion, view: View): readonly Label[] {
  const unit = plan.display.length;
  const title = shortened(roomTitle(room), NAME_WIDTH, NAME);
  const area = formatArea(room.floorArea, unit);
  const size = roomSizeWords(room, unit);
  const small = labelForms(title, SMALL_NAME);
  const modest = [...small.map(({ lines }) => makeLabel([...lines, { text: area, style: SMALL_FIGURE }])), ...small];
  // On a small drawing all rooms get the small type, so that none shouts.
  if (view.scale.ratio > SMALL_RATIO) return modest;
  const under = (style: Label['lines'][number]['style'], ...texts: readonly string[]) =>
    texts.filter(Boolean).map((text) => ({ text, style }));
  const large = labelForms(title, NAME);
  return [
    ...large.map(({ lines }) => makeLabel([...lines, ...under(FIGURE, area, size, barred)])),
    ...large.map(({ lines }) => makeLabel([...lines, ...under(FIGURE, area, size)])),
    ...small.map(({ lines }) => makeLabel([...lines, ...under(SMALL_FIGURE, area, size)])),
    ...modest,
  ];
}

function placeInRoom(forms: readonly Label[], room: Room, view: View, placer: Placer): string | null {
  const rings = room.floorRings.map((ring) => ring.map((p) => toPaper(view, p)));
  const places = gridPlaces(rings, toPaper(view, room.labelPoint));
  for (const { form, over } of tries(forms)) {
    for (const [x, y] of places) {
      const slot = labelSlot(form, x, y);
      if (!placer.isFree(slot, over) || !insideRings(rings, slot)) continue;
      placer.take(slot);
      return drawLabel(form, x, y);
    }
  }
  return null;
}

/** The full text across an edge of the white before a shorter one; across things only where no form has a place of its own. */
function* tries(forms: readonly Label[]): Generator<{ readonly form: Label; readonly over: readonly Ground[] }> {
  const [free = [], edges = [], things = []] = MANNERS;
  for (const form of forms) for (const over of [free, edges]) yield { form, over };
  for (const over of [things, [...things, 'line'] as const]) for (const form of forms) yield { form, over };
}
