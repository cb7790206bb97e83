import { applies, type Command, type Target } from './command.ts';
import type { Mode } from './modes.ts';
import { fits } from './shortcut.ts';

/**
 * Carries out the command for a key press: the first one, in the order of `modes`, whose shortcut fits, that applies, and that does not
 * leave the key to the next. Returns it; null if there is none, and the key is left to the browser.
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
