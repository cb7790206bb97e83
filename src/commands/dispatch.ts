import { applies, type Command, type Target } from './command.ts';
import type { Mode } from './modes.ts';
import { fits } from './shortcut.ts';

/**
 * Carries out the command whose shortcut a key press is: of the first mode that has one which applies and takes the key. Returns it;
 * null where there is none, and the key is the browser's.
 */
export function dispatch(
  commands: readonly Command[],
  modes: readonly Mode[],
  event: KeyboardEvent,
  target: Target,
): Command | null {
  for (const mode of modes) {
    const taken = commands.find(
      (command) =>
        isIn(command, mode) &&
        hasShortcut(command, event) &&
        applies(command, target) &&
        command.run(target, event) !== false,
    );
    if (taken) return taken;
  }
  return null;
}

function isIn({ modes = ['page'] }: Command, mode: Mode): boolean {
  return modes.includes(mode);
}

function hasShortcut({ shortcuts = [], byBrowser }: Command, event: KeyboardEvent): boolean {
  return !byBrowser && shortcuts.some((shortcut) => fits(shortcut, event));
}
