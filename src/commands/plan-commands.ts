import { SHEET_ID } from '../editor/open-menu.ts';
import { PART_MISSING } from '../platform/part-missing.ts';
import { canPickPlace } from '../storage/plan-files.ts';
import type { Command } from './command.ts';
import { isDialogOpen } from './modes.ts';
import { newSheet, openLibrary, saveFile, saveFileTo } from './open-and-save.ts';
import { showDialog } from './panels.ts';
import { plainKey, withAny, withCtrl } from './shortcut.ts';

/** The id of the field that picks plan files. */
export const PLAN_FILE_PICKER = 'plan-file-picker';

/** Commands on the whole plan, its file, and dialogs. */
export const PLAN_COMMANDS: readonly Command[] = [
  { id: 'plans', name: 'Plans', run: () => openLibrary() },
  { id: 'quick-card', name: 'One kit, one room: quick card', run: () => showDialog({ kind: 'quick-card' }) },
  { id: 'new-sheet', name: 'New plan', run: () => void newSheet() },
  {
    id: 'save',
    name: 'Save',
    shortcuts: [withCtrl('s')],
    modes: ['field', 'page', 'form'],
    run: () => void saveFile(),
    help: [{ keys: 'Ctrl + S', does: 'Save the plan as a file' }],
  },
  { id: 'save-to', name: 'Save to…', when: canPickPlace, run: () => void saveFileTo() },
  {
    id: 'open',
    name: 'Open a plan file',
    shortcuts: [withCtrl('o')],
    modes: ['field', 'page', 'form'],
    run: () => document.getElementById(PLAN_FILE_PICKER)?.click(),
  },
  { id: 'picture', name: 'Picture', run: ({ state }) => savePicture(state.say) },
  {
    id: 'keys',
    name: 'Keys',
    shortcuts: [plainKey('?')],
    modes: ['page', 'form'],
    run: () => showDialog({ kind: 'keys' }),
    help: [{ keys: '?', does: 'This list' }],
  },
  {
    id: 'leave-field',
    name: 'Back to the plan',
    shortcuts: [withAny('Escape')],
    modes: ['field'],
    run: (_, event) => leaveField(event?.target ?? null),
    help: [],
  },
  {
    id: 'give-up-dialog',
    name: 'Cancel loading',
    shortcuts: [withAny('Escape')],
    modes: ['dialog'],
    // An open dialog closes itself; this is for one that is still loading.
    when: () => !isDialogOpen(),
    run: () => showDialog(null),
    help: [],
  },
];

/** Loads the code of the sheet's files, which is not part of the start bundle. */
function savePicture(say: (message: string) => void): void {
  import('./sheet-files.ts').then(
    (files) => void files.savePicture(),
    () => say(PART_MISSING),
  );
}

/** Moves the focus from a field, which has restored its old value, to the sheet. Later, so that the field has rendered that value. */
function leaveField(field: EventTarget | null): void {
  if (!(field instanceof HTMLElement) || field.closest('dialog')) return;
  setTimeout(() => {
    field.blur();
    document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
  });
}
