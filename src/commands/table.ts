import type { XY } from '../../geometry/plan/model.ts';
import { assert } from '../../geometry/plane/assert.ts';
import { useAppStore } from '../state/store.ts';
import { applies, type Command, type KeyRow, MENU_SECTIONS, type Target, targetOf } from './command.ts';
import { DETECTOR_COMMANDS } from './detector-commands.ts';
import { DRAWING_COMMANDS } from './drawing-commands.ts';
import { EDIT_COMMANDS } from './edit-commands.ts';
import { LENGTH_COMMANDS } from './length-commands.ts';
import { LEVEL_COMMANDS } from './level-commands.ts';
import { PLAN_COMMANDS } from './plan-commands.ts';
import { QUESTION_COMMANDS } from './question-commands.ts';
import { REGION_COMMANDS } from './region-commands.ts';
import { recordCommand } from './repeat.ts';
import { ROOM_COMMANDS } from './room-commands.ts';
import { STAGE_COMMANDS } from './stage-commands.ts';
import { THING_COMMANDS } from './thing-commands.ts';
import { TOOL_COMMANDS } from './tool-commands.ts';
import { VIEW_COMMANDS } from './view-commands.ts';
import { WALL_COMMANDS } from './wall-commands.ts';

/**
 * All commands by menu, button or key. Menus, buttons, the key listener, the list of keys and their test read it. The order is that of the
 * rows within a section of the menu and in the list of keys.
 */
export const COMMANDS: readonly Command[] = [
  ...QUESTION_COMMANDS,
  ...THING_COMMANDS,
  ...WALL_COMMANDS,
  ...DETECTOR_COMMANDS,
  ...ROOM_COMMANDS,
  ...TOOL_COMMANDS,
  ...DRAWING_COMMANDS,
  ...LENGTH_COMMANDS,
  ...EDIT_COMMANDS,
  ...VIEW_COMMANDS,
  ...LEVEL_COMMANDS,
  ...PLAN_COMMANDS,
  ...STAGE_COMMANDS,
  ...REGION_COMMANDS,
];

export function commandById(id: string): Command {
  const command = COMMANDS.find((each) => each.id === id);
  assert(command !== undefined, `no command has the id ${id}`);
  return command;
}

/** Returns the commands that apply, by section of the menu, without empty sections. */
export function menuFor(target: Target): readonly (readonly Command[])[] {
  return MENU_SECTIONS.map((section) =>
    COMMANDS.filter((command) => command.section === section && applies(command, target)),
  ).filter((commands) => commands.length > 0);
}

/** Carries a command out on the current state of these items, or of the selection. */
export function runCommand(
  command: Command,
  ids: readonly string[] = useAppStore.getState().selection,
  at: XY | null = null,
): void {
  command.run(targetOf(useAppStore.getState(), ids, at));
  recordCommand(command);
}

/** The row of a key that is no shortcut: it is held during a pointer gesture. */
const HELD_WITH_POINTER: KeyRow = { keys: 'Alt', does: 'Turn snapping off while held' };

/** Returns the rows of the list of keys, each once. */
export function keyRows(): readonly KeyRow[] {
  return [...new Set([...COMMANDS.flatMap(rowsOf), HELD_WITH_POINTER])];
}

function rowsOf({ help, shortcuts = [], name }: Command): readonly KeyRow[] {
  if (help) return help;
  const keys = shortcuts.flatMap(({ shown }) => shown || []).join(', ');
  return keys && typeof name === 'string' ? [{ keys, does: name }] : [];
}
