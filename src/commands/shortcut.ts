/** A key, or several keys with the same effect, and its modifiers. */
export interface Shortcut {
  /** Text in lists and menus: "Ctrl + D". Empty for a shortcut that is shown nowhere. */
  readonly shown: string;
  /** Values of `KeyboardEvent.key`, in lower case; null for any key but Shift. */
  readonly keys: readonly string[] | null;
  /** Ctrl, or the Command key of a Mac. */
  readonly ctrl: Modifier;
  readonly shift: Modifier;
  readonly alt: Modifier;
}

type Modifier = 'down' | 'up' | 'either';

/** The properties of a keyboard event that decide which shortcut it is. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** Returns a shortcut of a key without Ctrl and Alt. Shift may be up or down, because the character may need it. */
export function plainKey(shown: string, ...keys: readonly string[]): Shortcut {
  return { shown, keys: keys.length > 0 ? keys : [shown.toLowerCase()], ctrl: 'up', shift: 'either', alt: 'up' };
}

/** Returns a shortcut of Ctrl and a key, without Shift and Alt. */
export function withCtrl(key: string): Shortcut {
  return { shown: `Ctrl + ${key.toUpperCase()}`, keys: [key], ctrl: 'down', shift: 'up', alt: 'up' };
}

/** Returns a shortcut of a key with any modifiers. */
export function withAny(shown: string, ...keys: readonly string[]): Shortcut {
  return {
    shown,
    keys: keys.length > 0 ? keys : [shown.toLowerCase()],
    ctrl: 'either',
    shift: 'either',
    alt: 'either',
  };
}

/** Returns whether a key press is this shortcut. */
export function fits({ keys, ctrl, shift, alt }: Shortcut, press: KeyPress): boolean {
  const key = press.key.toLowerCase();
  if (keys === null ? key === 'shift' : !keys.includes(key)) return false;
  return agrees(ctrl, press.ctrlKey || press.metaKey) && agrees(shift, press.shiftKey) && agrees(alt, press.altKey);
}

function agrees(modifier: Modifier, isDown: boolean): boolean {
  return modifier === 'either' || (modifier === 'down') === isDown;
}

/** Names in `aria-keyshortcuts` (WAI-ARIA 1.2) that differ from the capitalized key. */
const ARIA_KEY: Readonly<Record<string, string>> = { '+': 'Plus', ' ': 'Space', contextmenu: 'ContextMenu' };

/** Returns the value of `aria-keyshortcuts` for a button with these shortcuts; undefined for none. */
export function ariaShortcuts(shortcuts: readonly Shortcut[] = []): string | undefined {
  const all = shortcuts.flatMap(({ keys, ctrl, shift }) =>
    (keys ?? []).map((key) => {
      const name =
        ARIA_KEY[key] ?? (key.length === 1 ? key.toUpperCase() : key.replace(/^./, (first) => first.toUpperCase()));
      return [ctrl === 'down' && 'Control', shift === 'down' && 'Shift', name].filter(Boolean).join('+');
    }),
  );
  return all.length > 0 ? all.join(' ') : undefined;
}
