import {
  Fragment,
  type KeyboardEvent,
  type PointerEvent as ReactPointerEvent,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { type Command, isOnFloor, nameOf, type Target, targetOf } from '../../commands/command.ts';
import { ariaShortcuts } from '../../commands/shortcut.ts';
import { menuFor, runCommand } from '../../commands/table.ts';
import type { MenuAsk } from '../../state/menu.ts';
import { useAppStore } from '../../state/store.ts';
import { selectWhyNotWords } from '../../state/why-not.ts';
import { type MenuPlace, placedMenu } from './menu-position.ts';
import { targetName } from './target-name.ts';
import './command-menu.css';

/** The menu of the commands that apply to the pressed item or spot; nothing while it is closed. */
export function CommandMenu() {
  const ask = useAppStore(({ menu }) => menu);
  return ask && <OpenMenu key={`${ask.page} ${ask.ids}`} ask={ask} />;
}

/** Distance of the menu from the spot, px: a finger covers more than a mouse pointer. */
const CLEAR_PX = { mouse: 16, touch: 36 } as const;
/** Style until the menu is measured: invisible, but focusable. */
const UNPLACED = { left: 0, top: 0, opacity: 0 } as const;

function OpenMenu({ ask }: { readonly ask: MenuAsk }) {
  const card = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState<MenuPlace | null>(null);
  // Computed once when it opens: the plan does not change under an open menu.
  const [target] = useState(() => targetOf(useAppStore.getState(), ask.ids, ask.at));
  const [sections] = useState(() => menuFor(target));
  useFocusHeld(card);
  useClosedElsewhere(card);
  useLayoutEffect(() => {
    const box = card.current?.getBoundingClientRect();
    const page = { width: window.innerWidth, height: window.innerHeight };
    if (box) setAt(placedMenu(ask.page, box, page, CLEAR_PX[ask.byTouch ? 'touch' : 'mouse']));
  }, [ask]);
  const run = (command: Command) => {
    // Closed first, which restores the focus: the command may then move the focus.
    useAppStore.getState().closeMenu();
    setTimeout(() => runCommand(command, ask.ids, ask.at));
  };
  return (
    <>
      <div className="command-ground" />
      <div className="command-spot" style={{ left: ask.page[0], top: ask.page[1] }} />
      <section ref={card} className="command-menu" style={at ?? UNPLACED} aria-labelledby="command-menu-title">
        <Head target={target} />
        <div
          role="menu"
          tabIndex={-1}
          aria-labelledby="command-menu-title"
          aria-describedby="command-menu-why"
          onKeyDown={(event) => onMenuKey(event)}
        >
          {sections.map((commands, index) => (
            <Fragment key={commands[0]?.section}>
              {index > 0 && <hr />}
              {commands.map((command) => (
                <button
                  key={command.id}
                  type="button"
                  role="menuitem"
                  tabIndex={-1}
                  className="command-row"
                  aria-keyshortcuts={ariaShortcuts(command.shortcuts)}
                  onClick={() => run(command)}
                  onPointerMove={focusIfMoved}
                >
                  <span>{nameOf(command, target)}</span>
                  {shownShortcut(command) && <kbd className="key">{shownShortcut(command)}</kbd>}
                </button>
              ))}
            </Fragment>
          ))}
        </div>
      </section>
    </>
  );
}

/** Returns the shortcut that the menu shows; empty for none. */
const shownShortcut = ({ shortcuts = [] }: Command): string => shortcuts[0]?.shown ?? '';

/** The target of the menu; for bare floor also why no detector may be placed there. */
function Head({ target }: { readonly target: Target }) {
  const { at, state } = target;
  const whyNot = at && isOnFloor(target) ? selectWhyNotWords(state, at) : null;
  return (
    <div className="command-head">
      <p id="command-menu-title" className="command-title">
        {whyNot?.head || targetName(target)}
      </p>
      <p id="command-menu-why">{whyNot?.lines.join(' ')}</p>
    </div>
  );
}

/** Focuses the first row, and restores the focus when the menu closes. */
function useFocusHeld(card: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const before = document.activeElement;
    itemsIn(card.current)[0]?.focus({ preventScroll: true });
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, [card]);
}

/** Closes the menu at a press outside it, which does nothing else, and when the page is resized. */
function useClosedElsewhere(card: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const onDown = (event: PointerEvent) => {
      if (!card.current?.contains(event.target as Node)) useAppStore.getState().closeMenu();
    };
    // The browser's context menu would hide ours.
    const onContextMenu = (event: Event) => event.preventDefault();
    window.addEventListener('pointerdown', onDown, { capture: true });
    // A touch that opened the menu is followed by an emulated mouse press: the focus stays in the menu.
    const onMouseDown = (event: Event) => {
      if (!card.current?.contains(event.target as Node)) event.preventDefault();
    };
    window.addEventListener('mousedown', onMouseDown);
    window.addEventListener('contextmenu', onContextMenu);
    const { closeMenu } = useAppStore.getState();
    window.addEventListener('resize', closeMenu);
    return () => {
      window.removeEventListener('pointerdown', onDown, { capture: true });
      window.removeEventListener('mousedown', onMouseDown);
      window.removeEventListener('contextmenu', onContextMenu);
      window.removeEventListener('resize', closeMenu);
    };
  }, [card]);
}

/** Focuses the row under a moving mouse. A mouse at rest where the menu opens is ignored. */
function focusIfMoved(event: ReactPointerEvent<HTMLElement>): void {
  const moved = event.movementX !== 0 || event.movementY !== 0;
  if (moved && event.pointerType === 'mouse') event.currentTarget.focus({ preventScroll: true });
}

function itemsIn(card: Element | null): readonly HTMLElement[] {
  return [...(card?.querySelectorAll<HTMLElement>('[role="menuitem"]') ?? [])];
}

/** Arrows cycle through the rows, Home and End move to the ends, a letter to the next row that begins with it; Escape and Tab close the menu. */
function onMenuKey(event: KeyboardEvent<HTMLElement>): void {
  event.stopPropagation();
  const items = itemsIn(event.currentTarget);
  const now = items.indexOf(document.activeElement as HTMLElement);
  const to = (index: number) => {
    event.preventDefault();
    items[(index + items.length) % items.length]?.focus();
  };
  if (event.key === 'ArrowDown') to(now + 1);
  else if (event.key === 'ArrowUp') to(Math.max(now, 0) - 1);
  else if (event.key === 'Home') to(0);
  else if (event.key === 'End') to(items.length - 1);
  else if (event.key === 'Escape' || event.key === 'Tab') {
    event.preventDefault();
    useAppStore.getState().closeMenu();
  } else if (event.key.length === 1 && event.key !== ' ' && !event.ctrlKey && !event.metaKey) {
    const letter = event.key.toLowerCase();
    const next = items.findIndex((_, step) => beginsWith(items[(now + 1 + step) % items.length], letter));
    if (next >= 0) to(now + 1 + next);
  }
}

function beginsWith(item: HTMLElement | undefined, letter: string): boolean {
  return item?.textContent?.toLowerCase().startsWith(letter) ?? false;
}
