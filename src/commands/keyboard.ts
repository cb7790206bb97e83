import { useEffect } from 'react';
import { nudger } from '../editor/input/nudger.ts';
import { isIdleLetter } from '../state/letter-keys.ts';
import { useAppStore } from '../state/store.ts';
import { type Command, targetOf } from './command.ts';
import { dispatch } from './dispatch.ts';
import { modesAt } from './modes.ts';
import { recordCommand, recordTools } from './repeat.ts';
import { COMMANDS } from './table.ts';

/** The only listener for shortcuts: runs the command of the table whose shortcut a key press is. */
export function useKeyboard(): void {
  useEffect(() => {
    /** Commands whose key is held, by `KeyboardEvent.key`. */
    const held = new Map<string, Command>();
    const onKeyDown = (event: KeyboardEvent) => {
      // Fields, lists and sliders take their keys first.
      if (event.defaultPrevented || isIdleLetter(event)) return;
      // A command with Ctrl is a separate step of history, so a series of nudges ends here.
      if (event.ctrlKey || event.metaKey) nudger.settle();
      const state = useAppStore.getState();
      const command = dispatch(COMMANDS, modesAt(event.target), event, targetOf(state, state.selection, null));
      if (!command) return;
      event.preventDefault();
      recordCommand(command);
      if (command.release) held.set(event.key, command);
    };
    const onKeyUp = ({ key }: KeyboardEvent) => {
      held.get(key)?.release?.();
      held.delete(key);
    };
    const onBlur = () => {
      for (const command of held.values()) command.release?.();
      held.clear();
    };
    const stopRecording = recordTools();
    window.addEventListener('keydown', onKeyDown);
    window.addEventListener('keyup', onKeyUp);
    window.addEventListener('blur', onBlur);
    return () => {
      stopRecording();
      window.removeEventListener('keydown', onKeyDown);
      window.removeEventListener('keyup', onKeyUp);
      window.removeEventListener('blur', onBlur);
    };
  }, []);
}
