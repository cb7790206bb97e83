import type { ButtonHTMLAttributes } from 'react';
import { nameOf, targetOf } from '../../commands/command.ts';
import { ariaShortcuts } from '../../commands/shortcut.ts';
import { commandById, runCommand } from '../../commands/table.ts';
import { useAppStore } from '../../state/store.ts';

interface Props extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'type' | 'onClick'> {
  /** The id of the command. */
  readonly command: string;
}

/** A button for a command of the table, with its shortcuts; `children` replace its name. */
export function CommandButton({ command: id, children, className = 'button', ...rest }: Props) {
  const command = commandById(id);
  const state = useAppStore.getState();
  return (
    <button
      {...rest}
      type="button"
      className={className}
      aria-keyshortcuts={ariaShortcuts(command.shortcuts)}
      onClick={() => runCommand(command)}
    >
      {children ?? nameOf(command, targetOf(state, state.selection, null))}
    </button>
  );
}
