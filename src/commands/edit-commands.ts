import { ITEM_LISTS } from '../../geometry/edit/listed-items.ts';
import { PART_MISSING } from '../platform/part-missing.ts';
import { selectLevel } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import type { Command, Target } from './command.ts';
import { again, againWords } from './repeat.ts';
import { plainKey, withCtrl } from './shortcut.ts';

const isFloor = ({ found }: Target): boolean => found.every(({ list }) => list === 'rooms');
const hasSome = ({ found }: Target): boolean => found.length > 0;

/** Loads the clipboard's code, which is not part of the start bundle. */
function withClipboard(does: (clipboard: typeof import('./clipboard.ts')) => Promise<unknown>): void {
  import('./clipboard.ts').then(does, () => useAppStore.getState().say(PART_MISSING));
}

/** Commands on the history, the selection and the clipboard. */
export const EDIT_COMMANDS: readonly Command[] = [
  {
    id: 'undo',
    name: 'Undo',
    shortcuts: [withCtrl('z')],
    modes: ['page', 'form'],
    run: ({ state }) => state.undo(),
    help: [{ keys: 'Ctrl + Z', does: 'Undo the last step' }],
  },
  {
    id: 'redo',
    name: 'Redo',
    shortcuts: [
      { ...withCtrl('z'), shown: 'Ctrl + Shift + Z', shift: 'down' },
      { ...withCtrl('y'), shift: 'either' },
    ],
    modes: ['page', 'form'],
    run: ({ state }) => state.redo(),
    help: [{ keys: 'Ctrl + Shift + Z, Ctrl + Y', does: 'Redo it' }],
  },
  {
    id: 'copy',
    section: 'copy',
    name: 'Copy',
    shortcuts: [withCtrl('c')],
    byBrowser: true,
    help: [{ keys: 'Ctrl + C', does: 'Copy what is selected: for another level, another plan, another tab' }],
    when: hasSome,
    run: () => withClipboard(({ copySelection }) => copySelection()),
  },
  {
    id: 'cut',
    section: 'copy',
    name: 'Cut',
    shortcuts: [withCtrl('x')],
    byBrowser: true,
    help: [{ keys: 'Ctrl + X', does: 'Cut it' }],
    when: ({ found }) => found.some(({ list }) => list !== 'openings'),
    run: ({ state }) =>
      withClipboard(async ({ copySelection }) => {
        if (await copySelection()) state.deleteSelection();
      }),
  },
  {
    id: 'paste',
    section: 'copy',
    name: (target) => (target.at && isFloor(target) ? 'Paste here' : 'Paste'),
    shortcuts: [withCtrl('v')],
    byBrowser: true,
    help: [{ keys: 'Ctrl + V', does: 'Paste in the same place; a foot aside where that is taken' }],
    run: (target) => withClipboard(({ pasteByButton }) => pasteByButton(isFloor(target) ? target.at : null)),
  },
  {
    id: 'again',
    section: 'tool',
    name: () => `Repeat: ${againWords()}`,
    shortcuts: [plainKey('A')],
    help: [{ keys: 'A', does: 'Repeat the last tool or the last action' }],
    when: () => againWords() !== '',
    run: () => again(),
  },
  {
    id: 'select-frame',
    section: 'select',
    name: 'Select in a frame: two presses',
    when: ({ found }) => found.length === 0,
    run: ({ state }) => state.setTool({ kind: 'frame' }),
  },
  {
    id: 'select-everything',
    section: 'select',
    name: 'Select everything',
    shortcuts: [withCtrl('a')],
    help: [{ keys: 'Ctrl + A', does: 'Select everything on the level' }],
    run: ({ state }) => {
      if (state.tool.kind !== 'select') state.setTool(SELECT_TOOL);
      state.select(ITEM_LISTS.flatMap((list) => selectLevel(state)[list].map(({ id }) => id)));
    },
  },
  {
    id: 'select-next',
    name: 'Select the next item',
    shortcuts: [{ ...plainKey('N'), alt: 'either' }],
    run: (target, event) => selectNext(target, event?.shiftKey ? -1 : 1),
    help: [{ keys: 'N, Shift + N', does: 'Select the next item, the previous one' }],
  },
  {
    id: 'delete',
    section: 'delete',
    name: 'Delete',
    shortcuts: [plainKey('Delete'), plainKey('', 'backspace')],
    help: [{ keys: 'Delete or Backspace', does: 'Delete what is selected' }],
    when: hasSome,
    run: ({ state }) => {
      state.deleteSelection();
    },
    inPanel: () => true,
  },
];

/** Selects the next item of the level, in a cycle from detectors to walls. Returns false if there are none. */
function selectNext({ state }: Target, step: 1 | -1): boolean {
  const level = selectLevel(state);
  const { detectors, fixtures, objects, openings, rooms, walls } = level;
  const ids = [...detectors, ...fixtures, ...objects, ...openings, ...rooms, ...walls].map(({ id }) => id);
  if (ids.length === 0) return false;
  const now = ids.indexOf(state.selection[0] ?? '');
  const next = now < 0 && step < 0 ? ids.length - 1 : (now + step + ids.length) % ids.length;
  state.select([ids[next] as string]);
  return true;
}
