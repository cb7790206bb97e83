interface Anchor {
  /** A control and what it stands in, inside out, each with its top on the page, px. */
  readonly places: readonly { readonly element: Element; readonly top: number }[];
  /** Scroll position that the tops belong to, px. */
  readonly scrolled: number;
}

const NO_ANCHOR: Anchor = { places: [], scrolled: 0 };

const CONTROL = 'button, summary, label, a';
/** Scroll positions come with fractions, heights without. */
const ROUNDED_PX = 1;

/** The empty space at the top of a pane, below its heading: its style sheet says where. */
const SPACE = '--kept-space';

/** The work of one stage in a pane that several share. */
const WORK = '.stage__work:not([hidden])';

/** How far the work of a stage was scrolled when it was left, px. */
const left = new WeakMap<Element, number>();

/**
 * Keeps a control that was pressed where it is while what stands above it grows or shrinks: the scroll position follows before the page
 * is painted, and at the top of the pane, where nothing is left to scroll, empty space takes the place of what went. Where the control
 * itself goes, what it stood in keeps its place. The empty space goes with the next press beside the pane. A stage opens at its top, or
 * where it was left. Returns what ends that.
 */
export function keepPressed(pane: HTMLElement): () => void {
  const kept = new PressedPane(pane);
  // Before the browser paints: an observer of changes is called as soon as they are made, one of sizes after the layout.
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

/** A pane with the control in it that keeps its place. */
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

  /** What was pressed, or has the keyboard, keeps its place from here on. */
  hold(target: EventTarget | null): void {
    // The words in a button move within it when they turn bold.
    if (target instanceof Element) this.#anchor = anchorAt(target.closest(CONTROL) ?? target, this.#pane);
  }

  /** Puts the control back where it was, after a change. */
  correct(): void {
    const now = this.#pane.querySelector(WORK);
    if (now === this.#work) this.#keep();
    else this.#enter(now);
    this.#last = this.#pane.scrollTop;
  }

  /** Somebody scrolled. */
  follow(): void {
    const pane = this.#pane;
    this.#last = pane.scrollTop;
    if (pane.scrollTop !== this.#anchor.scrolled) this.#holdNext();
    // Out of view it is taken away, and nothing is seen to move.
    if (this.#space === 0 || pane.scrollTop < this.#space) return;
    const scrolled = pane.scrollTop - this.#space;
    this.#setSpace(0);
    if (this.#anchor.places.some(isShown)) this.#scrollBy(movedBy(this.#anchor));
    else pane.scrollTop = scrolled;
    this.#anchor = { ...this.#anchor, scrolled: pane.scrollTop };
  }

  /** Takes the empty space away at a press beside the pane: nothing in it is about to be pressed again. */
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
    // What has the keyboard there was led to, or pressed: it stays in view.
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
    // Somebody scrolled: that place is meant, not the one before.
    if (pane.scrollTop === this.#anchor.scrolled || this.#isAtEnd()) this.#putBack();
    // The fractions that scrolling leaves would add up.
    const [held] = this.#anchor.places;
    if (held && isShown(held) && Math.abs(movedBy(this.#anchor)) < ROUNDED_PX) {
      this.#anchor = { ...this.#anchor, scrolled: pane.scrollTop };
    } else this.#holdNext();
  }

  /** Where the control has gone, what it stood in is held. */
  #holdNext(): void {
    const first = this.#anchor.places.find(isShown);
    if (!first) this.#setSpace(0);
    this.#anchor = first ? anchorAt(first.element, this.#pane) : NO_ANCHOR;
  }

  /** The pane has become so much shorter that the browser had to scroll it back. */
  #isAtEnd(): boolean {
    const { scrollTop, clientHeight, scrollHeight } = this.#pane;
    return scrollTop < this.#anchor.scrolled && scrollTop + clientHeight >= scrollHeight - ROUNDED_PX;
  }

  #putBack(): void {
    const moved = movedBy(this.#anchor);
    // What comes takes the empty space first.
    if (moved > 0) this.#setSpace(Math.max(0, this.#space - moved));
    this.#scrollBy(movedBy(this.#anchor));
    const rest = movedBy(this.#anchor);
    if (rest > -1) return;
    this.#setSpace(this.#space - rest);
    // A pane without such a space.
    if (movedBy(this.#anchor) <= rest) this.#setSpace(0);
  }

  /** The browser cuts a fraction off: a tenth of a pixel up would be a whole one. */
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
