import { counted } from '../../geometry/messages/index.ts';
import { ringExtent } from '../../geometry/plane/extent.ts';
import { itemsWithin } from '../../geometry/snap/pick.ts';
import { selectLevel } from '../state/selectors.ts';
import { type Command, isOnFloor, type Target } from './command.ts';
import { nameRoom } from './go-to.ts';

/** Commands on the room whose floor was pressed. */
export const ROOM_COMMANDS: readonly Command[] = [
  {
    id: 'name-room',
    section: 'here',
    name: 'Enter what this room is used for',
    when: (target) => isOnFloor(target) && target.room?.label === null,
    run: ({ room }) => room && nameRoom(room.labelPoint),
  },
  {
    id: 'select-room',
    section: 'here',
    name: ({ room }) => `Name and use of ${room?.label?.name.trim() || 'this room'}`,
    when: (target) => target.found.length === 0 && isOnFloor(target) && target.room?.label !== null,
    run: ({ state, room }) => room?.label && state.select([room.label.id]),
  },
  {
    id: 'select-in-room',
    section: 'select',
    name: 'Select what stands in this room',
    when: isOnFloor,
    run: selectInRoom,
  },
];

function selectInRoom({ state, room }: Target): void {
  const level = selectLevel(state);
  const walls = new Set(level.walls.map(({ id }) => id));
  const ids = room ? itemsWithin(level, ringExtent(room.centerRings.flat())).filter((id) => !walls.has(id)) : [];
  state.select(ids);
  state.say(ids.length > 0 ? `${counted(ids.length, 'thing')} selected.` : 'Nothing stands in this room.');
}
