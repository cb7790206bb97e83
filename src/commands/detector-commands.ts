import { lockedAmong } from '../state/locked-detectors.ts';
import { selectReports } from '../state/selectors.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { type Command, isOnFloor } from './command.ts';
import { withLateEdits } from './late-edits.ts';
import { plainKey } from './shortcut.ts';

/** Commands on detectors, and on the spots where one may be placed. */
export const DETECTOR_COMMANDS: readonly Command[] = [
  {
    id: 'nearest',
    section: 'here',
    name: 'Move it to the nearest clear spot',
    when: ({ state, one }) =>
      one?.list === 'detectors' &&
      selectReports(state).some(({ id, verdict }) => id === one.item.id && verdict !== 'clear'),
    run: ({ state, one }) => one && withLateEdits('nearest', ({ moveToNearest }) => moveToNearest(state, one.item.id)),
  },
  {
    id: 'unlock-detector',
    section: 'move',
    name: 'Unlock to move',
    when: ({ state, one }) => one !== null && lockedAmong(state, [one.item.id]).includes(one.item.id),
    run: ({ state, one }) => one && state.unlock([one.item.id]),
    inPanel: () => true,
  },
  {
    id: 'lock-detector',
    section: 'move',
    name: 'Lock where it is',
    when: ({ state, one }) => one?.list === 'detectors' && state.unlocked.includes(one.item.id),
    run: ({ state, one }) => one && state.lock(one.item.id),
    inPanel: () => true,
  },
  {
    id: 'detector-here',
    section: 'here',
    name: 'Place a detector here',
    when: isOnFloor,
    run: ({ state, at }) => {
      if (at) state.addDetector(at);
    },
  },
  {
    id: 'why-not-here',
    section: 'look',
    name: 'Why not here? Point to see',
    shortcuts: [plainKey('W')],
    help: [{ keys: 'W', does: 'Why not here? What keeps a detector from the spot at the pointer or the crosshair' }],
    when: ({ state }) => state.tool.kind !== 'ask',
    // The button switches the tool on and off.
    run: ({ state }) => {
      if (state.tool.kind === 'ask') return state.setTool(SELECT_TOOL);
      state.select([]);
      state.setTool({ kind: 'ask' });
    },
  },
];
