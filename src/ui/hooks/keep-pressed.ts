interface Anchor {
  /** A control and its ancestors, from the inside out, each with its top in the viewport, px. */
  readonly places: readonly { readonly element: Element; readonly top: number }[];
  /** Scroll position that the tops belong to, px. */
  readonly scrolled: number;
}

const NO_ANCHOR: Anchor = { places: [], scrolled: 0 };

const CONTROL = 'button, summary, label, a, [role="slider"]';
/** Tolerance: scroll positions have fractions, heights do not. */
const ROUNDED_PX = 1;

/** CSS property with the empty space at the top of a pane, below its heading; the style sheet of the pane uses it. */
const SPACE = '--kept-space';

/** The work of one stage in a pane that several share. */
const WORK = '.stage__work:not([hidden])';

/** Scroll position of the work of a stage when it was left, px. */
const left = new WeakMap<Element, number>();

/**
 * Keeps a pressed control in place while the content above it grows or shrinks: the scroll position is corrected before the page is painted,
 * and at the top of the pane, where it cannot scroll further, empty space replaces removed content. If the control itself is removed, its
 * parent keeps its position. The empty space is removed with the next press outside the pane. A stage opens at its top, or at the scroll
 * position at which it was left. Returns the function that stops it.
 */
export function keepPressed(pane: HTMLElement): () => void {
  const kept = new PressedPane(pane);
  // Both run before the browser paints: a mutation observer right after the changes, a resize observer after layout.
  const changes = new MutationObserver(() => kept.correct());
  changes.observe(pane, { subtree: true, childList: true, characterData: true, attributes: true });
  const sizes = new ResizeObserver(() => kept.correct());
  for (const child of pane.children) sizes.observe(child);
  const listening = new AbortController();
  const { signal } = listening;
  for (const event of ['pointerdown', 'focusin', 'keydown', 'click'] as const)
    pane.addEventListener(event, ({ target }) => kept.hold(target), { capture: true, signal });
  pane.addEventListener('scroll', () => kept.follow(), { passive: true, signal });
  document.addEventListener('pointerdown', ({ target }) => kept.endSpace(target), { capture: true, signal });
  kept.correct();
  return () => {
    changes.disconnect();
    sizes.disconnect();
    listening.abort();
    kept.end();
  };
}

/** A pane and the control in it that keeps its place. */
class PressedPane {
  readonly #pane: HTMLElement;
  #anchor = NO_ANCHOR;
  /** Empty space at the top, px. */
  #space = 0;
  /** The last scroll position, px. */
  #last = 0;
  /** The work of the stage that is shown. */
  #work: Element | null = null;

  constructor(pane: HTMLElement) {
    this.#pane = pane;
  }

  /** Keeps the control that was pressed, or has the focus, in place from now on. */
  hold(target: EventTarget | null): void {
    // The control and not the pressed text in it, which moves when it turns bold.
    if (target instanceof Element) this.#anchor = anchorAt(target.closest(CONTROL) ?? target, this.#pane);
  }

  /** Puts the control back where it was, after a change. */
  correct(): void {
    const now = this.#pane.querySelector(WORK);
    if (now === this.#work) this.#keep();
    else this.#enter(now);
    this.#last = this.#pane.scrollTop;
  }

  /** Called after scrolling. */
  follow(): void {
    const pane = this.#pane;
    this.#last = pane.scrollTop;
    if (pane.scrollTop !== this.#anchor.scrolled) this.#holdNext();
    // The empty space is removed when it is out of view, so that nothing visible moves.
    if (this.#space === 0 || pane.scrollTop < this.#space) return;
    const scrolled = pane.scrollTop - this.#space;
    this.#setSpace(0);
    if (this.#anchor.places.some(isShown)) this.#scrollBy(movedBy(this.#anchor));
    else pane.scrollTop = scrolled;
    this.#anchor = { ...this.#anchor, scrolled: pane.scrollTop };
  }

  /** Removes the empty space at a press outside the pane: no control in the pane is about to be pressed again. */
  endSpace(target: EventTarget | null): void {
    if (this.#space === 0 || (target instanceof Node && this.#pane.contains(target))) return;
    this.#setSpace(0);
    this.#holdNext();
  }

  end(): void {
    if (this.#work) left.set(this.#work, this.#last);
    this.#setSpace(0);
  }

  #enter(now: Element | null): void {
    if (this.#work) left.set(this.#work, this.#last);
    this.#work = now;
    // A focused element in the new stage was pressed, or focused by a command, so it stays in view.
    if (!now || now.contains(document.activeElement)) {
      this.#keep();
      return;
    }
    this.#setSpace(0);
    this.#pane.scrollTop = left.get(now) ?? 0;
    this.#anchor = { ...NO_ANCHOR, scrolled: this.#pane.scrollTop };
  }

  #keep(): void {
    const pane = this.#pane;
    // If the user has scrolled since, that position is kept and not the old one.
    if (pane.scrollTop === this.#anchor.scrolled || this.#isAtEnd()) this.#putBack();
    // Does not measure again for fractions of a pixel, which would add up.
    const [held] = this.#anchor.places;
    if (held && isShown(held) && Math.abs(movedBy(this.#anchor)) < ROUNDED_PX) {
      this.#anchor = { ...this.#anchor, scrolled: pane.scrollTop };
    } else this.#holdNext();
  }

  /** Holds the control, or its nearest ancestor that is still shown. */
  #holdNext(): void {
    const first = this.#anchor.places.find(isShown);
    if (!first) this.#setSpace(0);
    this.#anchor = first ? anchorAt(first.element, this.#pane) : NO_ANCHOR;
  }

  /** Returns whether the pane has become so much shorter that the browser scrolled it back. */
  #isAtEnd(): boolean {
    const { scrollTop, clientHeight, scrollHeight } = this.#pane;
    return scrollTop < this.#anchor.scrolled && scrollTop + clientHeight >= scrollHeight - ROUNDED_PX;
  }

  #putBack(): void {
    const moved = movedBy(this.#anchor);
    // New content uses up the empty space first.
    if (moved > 0) this.#setSpace(Math.max(0, this.#space - moved));
    this.#scrollBy(movedBy(this.#anchor));
    const rest = movedBy(this.#anchor);
    if (rest > -1) return;
    this.#setSpace(this.#space - rest);
    // The style sheet of this pane does not use the space.
    if (movedBy(this.#anchor) <= rest) this.#setSpace(0);
  }

  /** Rounds, because the browser truncates the scroll position: -0.1 px would become -1 px. */
  #scrollBy(px: number): void {
    this.#pane.scrollTop = Math.round(this.#pane.scrollTop + px);
  }

  #setSpace(px: number): void {
    if (px === this.#space) return;
    this.#space = px;
    this.#pane.style.setProperty(SPACE, `${px}px`);
  }
}

function anchorAt(target: Element, pane: Element): Anchor {
  const places: { element: Element; top: number }[] = [];
  for (let each: Element | null = target; each && each !== pane; each = each.parentElement) {
    places.push({ element: each, top: each.getBoundingClientRect().top });
  }
  return { places, scrolled: pane.scrollTop };
}

/** Returns how far down the page the anchor has moved, px. */
function movedBy({ places }: Anchor): number {
  const held = places.find(isShown);
  return held ? held.element.getBoundingClientRect().top - held.top : 0;
}

const isShown = ({ element }: { readonly element: Element }): boolean =>
  element.isConnected && element.getClientRects().length > 0;
