import { isPlanInView, usePanels } from '../../commands/panels.ts';
import { isTyping } from '../../editor/input/typing.ts';
import { SHEET_ID } from '../../editor/open-menu.ts';

const FOCUSABLE = 'a[href], button, input, select, textarea, summary, [tabindex]';
/** What belongs to the plan: when it goes, the keyboard goes to the plan. */
const OF_THE_PLAN = '.item-panel, .sheet, .verdict-panel, [role="menu"]';

/** The surroundings of what had the focus, from the nearest up. */
const HOME = 'li, section, fieldset, form, aside, main, dialog, nav, header';

/** What had the focus, and what stood around it then: it may be gone when it is looked for. */
interface Focused {
  readonly element: HTMLElement;
  readonly ancestors: readonly Element[];
  /** What could be focused in its surroundings, the nearest first: after it, then before it. */
  readonly near: readonly HTMLElement[];
}

/**
 * Keeps the focus on the page's parts: when what had it is removed, hidden or disabled, or gives it up to a key, a browser lets it fall to
 * the body, where Tab begins anew and a screen reader reads the whole page. Then the nearest part of the same surroundings gets it, or the
 * plan. A press of the pointer beside everything still takes it away.
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

/** Returns whether nothing has the focus, or what has it is not to be seen or not to be used any more. */
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

/** Returns what gets the focus in place of what had it. */
function placeAfter({ element, ancestors, near }: Focused): HTMLElement | null {
  const dialog = document.querySelector<HTMLElement>('dialog[open]');
  const plan = isPlanInView(usePanels.getState()) ? document.getElementById(SHEET_ID) : null;
  // A key that ended a field: on a form it stays there, beside the plan the plan has the keys.
  if (canFocus(element)) return dialog || !plan ? element : plan;
  if (!dialog && plan && ancestors.some((each) => each.matches(OF_THE_PLAN))) return plan;
  // In a field the next keys would be typed, and Control + Z would be the field's own.
  const stops = near.filter((each) => isStop(each) && !isTyping(each) && (dialog?.contains(each) ?? true));
  const homes = ancestors.filter((each) => each.isConnected && each.matches(HOME));
  const [beside] = homes.flatMap((home) => stops.find((each) => home.contains(each)) ?? []);
  return beside ?? stopIn(dialog) ?? plan ?? stopIn(document.querySelector('main:not([hidden])'));
}

/** What the keyboard comes to by Tab, or by arrows as to the rows of a list; not a heading that only takes the focus of a page. */
const isStop = (element: HTMLElement): boolean =>
  (element.tabIndex >= 0 || element instanceof HTMLButtonElement) && canFocus(element);

/** Returns the first part of a region that Tab comes to, or its heading. */
function stopIn(region: Element | null): HTMLElement | null {
  const all = [...(region?.querySelectorAll<HTMLElement>(FOCUSABLE) ?? [])];
  return all.find(isStop) ?? all.find(canFocus) ?? null;
}
