import { isPlanInView, usePanels } from '../../commands/panels.ts';
import { isTyping } from '../../editor/input/typing.ts';
import { SHEET_ID } from '../../editor/open-menu.ts';

const FOCUSABLE = 'a[href], button, input, select, textarea, summary, [tabindex]';
/** Parts that belong to the plan: when one that had the focus is removed, the plan gets the focus. */
const OF_THE_PLAN = '.item-panel, .sheet, .verdict-panel, [role="menu"]';

/** Containers in which a new element for the focus is searched, starting with the nearest. */
const HOME = 'li, section, fieldset, form, aside, main, dialog, nav, header';

/** The last focused element and its surroundings, recorded because it may be removed later. */
interface Focused {
  readonly element: HTMLElement;
  readonly ancestors: readonly Element[];
  /** Focusable elements near it, the nearest first: those after it, then those before it. */
  readonly near: readonly HTMLElement[];
}

/**
 * Keeps the focus on an element of the page. When the focused element is removed, hidden or disabled, or loses the focus by a key, a browser
 * moves the focus to the body, where Tab starts from the top and a screen reader reads the whole page. This moves it to the nearest element
 * in the same container instead, or to the plan. A press of the pointer on an empty place still removes the focus.
 */
export function startFocusGuard(): void {
  let last: Focused | null = null;
  let byKey = false;
  let waits = false;
  const check = () => {
    waits = false;
    if (!last || !document.hasFocus() || !isFocusLost()) return;
    if (canFocus(last.element) && !byKey) return;
    placeAfter(last)?.focus();
  };
  const soon = () => {
    if (waits) return;
    waits = true;
    requestAnimationFrame(check);
  };
  document.addEventListener('focusin', ({ target }) => {
    if (target instanceof HTMLElement && target !== document.body) last = focused(target);
  });
  document.addEventListener('focusout', soon);
  window.addEventListener('keydown', () => setKey(true), { capture: true });
  window.addEventListener('pointerdown', () => setKey(false), { capture: true });
  const setKey = (is: boolean) => {
    byKey = is;
  };
  new MutationObserver(soon).observe(document.body, {
    childList: true,
    subtree: true,
    attributes: true,
    attributeFilter: ['hidden', 'disabled', 'open', 'data-plan', 'class'],
  });
}

/** Returns whether nothing has the focus, or the focused element is hidden or disabled. */
function isFocusLost(): boolean {
  const { activeElement } = document;
  return !(activeElement instanceof HTMLElement) || activeElement === document.body || !canFocus(activeElement);
}

function canFocus(element: HTMLElement): boolean {
  return (
    element.isConnected &&
    element.checkVisibility({ visibilityProperty: true }) &&
    !element.matches(':disabled, [inert] *')
  );
}

function focused(element: HTMLElement): Focused {
  const ancestors: Element[] = [];
  for (let each = element.parentElement; each && each !== document.body; each = each.parentElement)
    ancestors.push(each);
  const all = [...document.querySelectorAll<HTMLElement>(FOCUSABLE)];
  const index = all.indexOf(element);
  return {
    element,
    ancestors,
    near: [...all.slice(index + 1, index + 40), ...all.slice(Math.max(0, index - 40), index).reverse()],
  };
}

/** Returns the element that gets the focus next; null for none. */
function placeAfter({ element, ancestors, near }: Focused): HTMLElement | null {
  const dialog = document.querySelector<HTMLElement>('dialog[open]');
  const plan = isPlanInView(usePanels.getState()) ? document.getElementById(SHEET_ID) : null;
  // A key has ended the input in a field: on a form the field keeps the focus, beside the plan the plan gets it.
  if (canFocus(element)) return dialog || !plan ? element : plan;
  if (!dialog && plan && ancestors.some((each) => each.matches(OF_THE_PLAN))) return plan;
  // Not a field: the next keys would be typed into it, and Control+Z would undo its text only.
  const stops = near.filter((each) => isStop(each) && !isTyping(each) && (dialog?.contains(each) ?? true));
  const homes = ancestors.filter((each) => each.isConnected && each.matches(HOME));
  const [beside] = homes.flatMap((home) => stops.find((each) => home.contains(each)) ?? []);
  return beside ?? stopIn(dialog) ?? plan ?? stopIn(document.querySelector('main:not([hidden])'));
}

/** Whether Tab, or arrow keys in a list, can reach the element; false for a heading that only gets the focus of a page. */
const isStop = (element: HTMLElement): boolean =>
  (element.tabIndex >= 0 || element instanceof HTMLButtonElement) && canFocus(element);

/** Returns the first element of a region that Tab reaches, or its heading; null for none. */
function stopIn(region: Element | null): HTMLElement | null {
  const all = [...(region?.querySelectorAll<HTMLElement>(FOCUSABLE) ?? [])];
  return all.find(isStop) ?? all.find(canFocus) ?? null;
}
