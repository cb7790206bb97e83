import { copySelection, pasteByButton } from './clipboard.ts';
import type { Act, ActPlace } from './command.ts';

const isFloor = (found: ActPlace['found']): boolean => found.every(({ list }) => list === 'rooms');

/** Their keys are the browser's own: it hands the clipboard over with them, and asks nobody. See `use-clipboard.ts`. */
export const COPY_ACTS: readonly Act[] = [
  {
    id: 'copy',
    group: 'copy',
    name: 'Copy',
    does: 'Copy what is selected: for another level, another plan, another tab',
    key: { shown: 'Ctrl + C', press: 'c', ctrl: true },
    applies: ({ found }) => found.length > 0,
    run: () => void copySelection(),
  },
  {
    id: 'cut',
    group: 'copy',
    name: 'Cut',
    does: 'Cut it',
    key: { shown: 'Ctrl + X', press: 'x', ctrl: true },
    applies: ({ found }) => found.some(({ list }) => list !== 'openings'),
    run: ({ state }) => void copySelection().then((done) => done && state.deleteSelection()),
  },
  {
    id: 'paste',
    group: 'copy',
    name: ({ found, at }) => (at && isFloor(found) ? 'Paste here' : 'Paste'),
    does: 'Paste in the same place; a foot aside where that is taken',
    key: { shown: 'Ctrl + V', press: 'v', ctrl: true },
    applies: () => true,
    run: ({ found, at }) => void pasteByButton(isFloor(found) ? at : null),
  },
];
