import { applies, nameOf, targetOf } from '../../commands/command.ts';
import { ariaShortcuts } from '../../commands/shortcut.ts';
import { COMMANDS, runCommand } from '../../commands/table.ts';
import { useAppStore } from '../../state/store.ts';
import { CommandButton } from '../shell/command-button.tsx';

/** The most used commands as buttons; the last button lists all of them. */
export function CommandButtons({ ids }: { readonly ids: readonly string[] }) {
  const target = targetOf(useAppStore.getState(), ids, null);
  return (
    <div className="buttons">
      {COMMANDS.filter((command) => command.inPanel?.(target) && applies(command, target)).map((command) => (
        <button
          key={command.id}
          type="button"
          className="button"
          aria-keyshortcuts={ariaShortcuts(command.shortcuts)}
          onClick={() => runCommand(command, ids)}
        >
          {nameOf(command, target)}
        </button>
      ))}
      <CommandButton command="menu" aria-haspopup="menu" />
    </div>
  );
}
