import { counted } from '../../geometry/messages/index.ts';
import { ringExtent } from '../../geometry/plane/body.ts';
import { itemsWithin } from '../../geometry/snap/pick.ts';
import { ITEM_LISTS } from '../state/plan-edits.ts';
import { selectLevel } from '../state/selectors.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { pannedBy, toScreen } from '../state/viewport.ts';
import { type Act, type ActPlace, onFloor } from './command.ts';
import { nameRoom } from './go-to.ts';
import { again, againWords } from './repeat.ts';

const bare = ({ found }: ActPlace): boolean => found.length === 0;

/** What can be done on bare floor and paper, and with the thing in hand. */
export const SHEET_ACTS: readonly Act[] = [
  {
    id: 'detector-here',
    group: 'here',
    name: 'Set a detector here',
    applies: onFloor,
    run: ({ state, at }) => {
      if (at) state.addDetector(at);
    },
  },
  {
    id: 'name-room',
    group: 'here',
    name: 'Say what this room is used for',
    applies: (place) => onFloor(place) && place.room?.label === null,
    run: ({ room }) => room && nameRoom(room.labelPoint),
  },
  {
    id: 'select-room',
    group: 'here',
    name: ({ room }) => `Name and use of ${room?.label?.name.trim() || 'this room'}`,
    applies: (place) => bare(place) && onFloor(place) && place.room?.label !== null,
    run: ({ state, room }) => room?.label && state.select([room.label.id]),
  },
  {
    id: 'put-back',
    group: 'hand',
    name: 'Put it back',
    applies: ({ state }) => state.tool.kind !== 'select',
    run: ({ state }) => state.setTool(SELECT_TOOL),
  },
  {
    id: 'keep',
    group: 'hand',
    name: ({ state }) => (state.keepTool ? 'Keep it no longer' : 'Keep it in hand'),
    does: 'Keep the thing in hand: each press sets one down',
    key: { shown: 'K', press: 'k' },
    applies: ({ state }) => state.tool.kind !== 'select',
    run: ({ state }) => state.setKeepTool(!state.keepTool),
  },
  {
    id: 'again',
    group: 'hand',
    name: () => `Again: ${againWords()}`,
    does: 'Again: the last thing in hand, or the last act',
    key: { shown: 'A', press: 'a' },
    applies: () => againWords() !== '',
    run: () => again(),
  },
  {
    id: 'ask',
    group: 'look',
    name: 'Why not here? Point and be told',
    does: 'Why not here? What keeps a detector from the spot at the pointer or the cross',
    key: { shown: 'W', press: 'w' },
    applies: ({ state }) => state.tool.kind !== 'ask',
    run: ({ state }) => {
      state.select([]);
      state.setTool({ kind: 'ask' });
    },
  },
  {
    id: 'select-in-room',
    group: 'select',
    name: 'Select what stands in this room',
    applies: onFloor,
    run: ({ state, room }) => {
      const level = selectLevel(state);
      const walls = new Set(level.walls.map(({ id }) => id));
      const ids = room ? itemsWithin(level, ringExtent(room.centreRings.flat())).filter((id) => !walls.has(id)) : [];
      state.select(ids);
      state.say(ids.length > 0 ? `${counted(ids.length, 'thing')} selected.` : 'Nothing stands in this room.');
    },
  },
  {
    id: 'frame',
    group: 'select',
    name: 'Select in a frame: two presses',
    applies: bare,
    run: ({ state }) => state.setTool({ kind: 'frame' }),
  },
  {
    id: 'everything',
    group: 'select',
    name: 'Select everything',
    does: 'Select everything on the level',
    key: { shown: 'Ctrl + A', press: 'a', ctrl: true },
    applies: () => true,
    run: ({ state }) => {
      if (state.tool.kind !== 'select') state.setTool(SELECT_TOOL);
      state.select(ITEM_LISTS.flatMap((list) => selectLevel(state)[list].map(({ id }) => id)));
    },
  },
  {
    id: 'middle',
    group: 'look',
    name: 'Bring this spot to the middle',
    applies: ({ at }) => at !== null,
    run: ({ state, at }) => {
      if (!at) return;
      const { viewport, stageSize } = state;
      const [x, y] = toScreen(viewport, at);
      state.setViewport(pannedBy(viewport, stageSize.width / 2 - x, stageSize.height / 2 - y));
    },
  },
  {
    id: 'centre',
    group: 'look',
    name: 'Move the sheet by a press',
    applies: bare,
    run: ({ state }) => state.setTool({ kind: 'centre' }),
  },
];
