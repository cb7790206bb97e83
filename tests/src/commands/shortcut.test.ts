import { describe, expect, it } from 'vitest';
import { ariaShortcuts, fits, plainKey, withAny, withCtrl } from '../../../src/commands/shortcut.ts';

const press = (key: string, ...held: readonly ('ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey')[]) => ({
  key,
  ctrlKey: held.includes('ctrlKey'),
  metaKey: held.includes('metaKey'),
  shiftKey: held.includes('shiftKey'),
  altKey: held.includes('altKey'),
});

describe('fits(shortcut, press)', () => {
  it.each([
    { name: 'a letter', shortcut: plainKey('W'), by: press('w'), expected: true },
    { name: 'a letter with Shift', shortcut: plainKey('W'), by: press('W', 'shiftKey'), expected: true },
    { name: 'a letter with Ctrl', shortcut: plainKey('W'), by: press('w', 'ctrlKey'), expected: false },
    { name: 'a letter with Alt', shortcut: plainKey('W'), by: press('w', 'altKey'), expected: false },
    { name: 'Ctrl', shortcut: withCtrl('s'), by: press('s', 'ctrlKey'), expected: true },
    { name: 'Command, as Ctrl', shortcut: withCtrl('s'), by: press('s', 'metaKey'), expected: true },
    { name: 'Ctrl and Shift', shortcut: withCtrl('s'), by: press('S', 'ctrlKey', 'shiftKey'), expected: false },
    { name: 'without Ctrl', shortcut: withCtrl('s'), by: press('s'), expected: false },
    { name: 'any modifier', shortcut: withAny('Escape'), by: press('Escape', 'altKey', 'ctrlKey'), expected: true },
    { name: 'another key', shortcut: withAny('Escape'), by: press('Enter'), expected: false },
  ])('$name: $expected', ({ shortcut, by, expected }) => {
    expect(fits(shortcut, by)).toBe(expected);
  });
});

describe('ariaShortcuts(shortcuts)', () => {
  // The form of the values: WAI-ARIA 1.2, aria-keyshortcuts.
  it.each([
    { shortcuts: [withCtrl('z')], value: 'Control+Z' },
    { shortcuts: [plainKey('Delete'), plainKey('', 'backspace')], value: 'Delete Backspace' },
    { shortcuts: [plainKey('+', '+', '=')], value: 'Plus =' },
    { shortcuts: [withAny('Menu key', 'contextmenu')], value: 'ContextMenu' },
    { shortcuts: [], value: undefined },
  ])('is $value', ({ shortcuts, value }) => {
    expect(ariaShortcuts(shortcuts)).toBe(value);
  });
});
