import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Command, nameOf, targetOf } from '../../../src/commands/command.ts';
import { dispatch } from '../../../src/commands/dispatch.ts';
import type { Mode } from '../../../src/commands/modes.ts';
import type { KeyPress, Shortcut } from '../../../src/commands/shortcut.ts';
import { COMMANDS, keyRows } from '../../../src/commands/table.ts';
import { useAppStore } from '../../../src/state/store.ts';

const target = targetOf(useAppStore.getState(), [], null);
const modesOf = ({ modes = ['page'] }: Command): readonly Mode[] => modes;
const states = (modifier: Shortcut['ctrl']) => (modifier === 'either' ? [false, true] : [modifier === 'down']);

/** Every key press that a shortcut is; none for the one that is any key. */
function pressesOf({ keys, ctrl, shift, alt }: Shortcut): KeyPress[] {
  return (keys ?? []).flatMap((key) =>
    states(ctrl).flatMap((ctrlKey) =>
      states(shift).flatMap((shiftKey) =>
        states(alt).map((altKey) => ({ key, ctrlKey, shiftKey, altKey, metaKey: false })),
      ),
    ),
  );
}

const withKeys = COMMANDS.flatMap((command) =>
  (command.shortcuts ?? []).flatMap((shortcut) =>
    modesOf(command).map((mode) => ({ command, shortcut, mode, id: command.id, shown: shortcut.shown })),
  ),
);

/** The ids of the commands that buttons of src/ui name. */
const ofButtons = readdirSync('src/ui', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.tsx'))
  .flatMap((name) => [...readFileSync(`src/ui/${name}`, 'utf8').matchAll(/<CommandButton\s+command="([^"]+)"/g)])
  .map(([, id]) => id ?? '');

describe('the table of commands', () => {
  it('has each id once, and a name for each', () => {
    expect(new Set(COMMANDS.map(({ id }) => id)).size).toBe(COMMANDS.length);
    expect(COMMANDS.filter((command) => nameOf(command, target).trim() === '')).toEqual([]);
  });

  it('has no two commands with one shortcut in one mode', () => {
    const first = new Map<string, string>();
    const twice = withKeys.flatMap(({ id, shortcut, mode }) =>
      pressesOf(shortcut).flatMap((press) => {
        const key = `${mode}: ${JSON.stringify(press)}`;
        const before = first.get(key) ?? id;
        first.set(key, before);
        return before === id ? [] : [`${key}: ${before}, ${id}`];
      }),
    );
    expect(twice).toEqual([]);
  });

  it('has no command that neither menu, panel, key nor button reaches', () => {
    const reached = (command: Command) =>
      command.section !== undefined ||
      command.inPanel !== undefined ||
      (command.shortcuts ?? []).length > 0 ||
      command.id.startsWith('stage-') ||
      ofButtons.includes(command.id);
    expect(COMMANDS.filter((command) => !reached(command)).map(({ id }) => id)).toEqual([]);
  });

  it('has every command that a button names', () => {
    expect(ofButtons.length).toBeGreaterThan(10);
    expect(ofButtons.filter((id) => COMMANDS.every((command) => command.id !== id))).toEqual([]);
  });
});

describe('the list of keys', () => {
  it('has every shortcut, and each row once', () => {
    const rows = keyRows();
    expect(new Set(rows.map(({ keys, does }) => `${keys} ${does}`)).size).toBe(rows.length);
    const missing = withKeys.filter(({ shown }) => !rows.some(({ keys, does }) => `${keys} ${does}`.includes(shown)));
    expect(missing.map(({ id, shown }) => `${id}: ${shown}`)).toEqual([]);
  });

  it('says in words what each does', () => {
    expect(keyRows().filter(({ keys, does }) => !keys || !does)).toEqual([]);
  });
});

describe('dispatch', () => {
  const event = (press: KeyPress) => press as KeyboardEvent;
  const press = (key: string, more: Partial<KeyPress> = {}) =>
    event({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...more });
  /** The table with commands that always apply and do nothing. */
  const fakes = COMMANDS.map((command): Command => ({ ...command, when: () => true, run: () => undefined }));

  it.each(withKeys.filter(({ command }) => !command.byBrowser))(
    'carries out $id by "$shown" in the mode $mode',
    ({ id, mode, shortcut }) => {
      for (const each of pressesOf(shortcut)) expect(dispatch(fakes, [mode], event(each), target)?.id).toBe(id);
    },
  );

  it.each(['c', 'x', 'v'])('leaves Ctrl + %s to the browser, which hands the clipboard over', (key) => {
    expect(dispatch(fakes, ['page'], press(key, { ctrlKey: true }), target)).toBeNull();
  });

  it('asks the modes in their order, and goes on where a command does not apply or leaves the key', () => {
    const asked: string[] = [];
    const shortcuts = COMMANDS.find(({ id }) => id === 'give-up')?.shortcuts ?? [];
    const row = (id: string, mode: Mode, when: boolean, result: unknown): Command => ({
      id,
      name: id,
      shortcuts,
      modes: [mode],
      when: () => when,
      run: () => {
        asked.push(id);
        return result;
      },
    });
    const table = [
      row('last', 'page', true, undefined),
      row('takes', 'sheet', true, undefined),
      row('leaves', 'tool', true, false),
      row('is out of place', 'length', false, undefined),
    ];
    expect(dispatch(table, ['length', 'tool', 'sheet', 'page'], press('Escape'), target)?.id).toBe('takes');
    expect(asked).toEqual(['leaves', 'takes']);
  });

  it('takes a key with another modifier for another key', () => {
    expect(dispatch(fakes, ['page'], press('s', { altKey: true, ctrlKey: true }), target)).toBeNull();
    expect(dispatch(fakes, ['page'], press('d'), target)).toBeNull();
    expect(dispatch(fakes, ['page'], press('D', { metaKey: true }), target)?.id).toBe('duplicate');
  });

  it('closes the length that waits with any key that is not for it, and lets the key go on', () => {
    expect(dispatch(COMMANDS, ['length'], press('q'), target)).toBeNull();
    expect(dispatch(fakes, ['length'], press('q'), target)?.id).toBe('leave-length');
    expect(dispatch(fakes, ['length'], press('Shift', { shiftKey: true }), target)).toBeNull();
  });
});
