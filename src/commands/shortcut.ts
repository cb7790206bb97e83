/** A key, or several that do the same, and the modifiers that go with it. */
export interface Shortcut {
  /** As lists and menus show it: "Ctrl + D". Empty for one that is shown nowhere. */
  readonly shown: string;
  /** Values of `KeyboardEvent.key`, in lower case; null for any key but Shift. */
  readonly keys: readonly string[] | null;
  /** Ctrl, or the Command key of a Mac. */
  readonly ctrl: Modifier;
  readonly shift: Modifier;
  readonly alt: Modifier;
}

type Modifier = 'down' | 'up' | 'either';

/** What of a keyboard event decides which shortcut it is. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** A key alone. Shift is free: it may be what makes the sign. */
export function plainKey(shown: string, ...keys: readonly string[]): Shortcut {
  return { shown, keys: keys.length > 0 ? keys : [shown.toLowerCase()], ctrl: 'up', shift: 'either', alt: 'up' };
}

/** Ctrl and a key, without Shift. */
export function withCtrl(key: string): Shortcut {
  return { shown: `Ctrl + ${key.toUpperCase()}`, keys: [key], ctrl: 'down', shift: 'up', alt: 'up' };
}

/** A key whatever is held with it. */
export function withAny(shown: string, ...keys: readonly string[]): Shortcut {
  return {
    shown,
    keys: keys.length > 0 ? keys : [shown.toLowerCase()],
    ctrl: 'either',
    shift: 'either',
    alt: 'either',
  };
}

/** Whether a key press is this shortcut. */
export function fits({ keys, ctrl, shift, alt }: Shortcut, press: KeyPress): boolean {
  const key = press.key.toLowerCase();
  if (keys === null ? key === 'shift' : !keys.includes(key)) return false;
  return agrees(ctrl, press.ctrlKey || press.metaKey) && agrees(shift, press.shiftKey) && agrees(alt, press.altKey);
}

function agrees(modifier: Modifier, isDown: boolean): boolean {
  return modifier === 'either' || (modifier === 'down') === isDown;
}

/** Names of keys in `aria-keyshortcuts` (WAI-ARIA 1.2) that are not the key with a capital. */
const ARIA_KEY: Readonly<Record<string, string>> = { '+': 'Plus', ' ': 'Space', contextmenu: 'ContextMenu' };

/** The value of `aria-keyshortcuts` for a button with these shortcuts; undefined for none. */
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
