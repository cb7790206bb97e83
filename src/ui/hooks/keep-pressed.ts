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
 * itself goes, what it stood in keeps its place. A stage opens at its top, or where it was left. Returns what ends that.
 */
export function keepPressed(pane: HTMLElement): () => void {
  let anchor = NO_ANCHOR;
  let space = 0;
  let last = 0;
  let work: Element | null = null;
  const setSpace = (px: number) => {
    if (px === space) return;
    space = px;
    pane.style.setProperty(SPACE, `${px}px`);
  };
  const hold = ({ target }: Event) => {
    // The words in a button move within it when they turn bold.
    if (target instanceof Element) anchor = anchorAt(target.closest(CONTROL) ?? target, pane);
  };
  const follow = () => {
    const first = anchor.places.find(isShown);
    if (!first) setSpace(0);
    anchor = first ? anchorAt(first.element, pane) : NO_ANCHOR;
  };
  const correct = () => {
    const now = pane.querySelector(WORK);
    if (now === work) keep();
    else enter(now);
    last = pane.scrollTop;
  };
  const enter = (now: Element | null) => {
    if (work) left.set(work, last);
    work = now;
    // What has the keyboard there was led to, or pressed: it stays in view.
    if (!now || now.contains(document.activeElement)) {
      keep();
      return;
    }
    anchor = NO_ANCHOR;
    setSpace(0);
    pane.scrollTop = left.get(now) ?? 0;
    anchor = { ...anchor, scrolled: pane.scrollTop };
  };
  const keep = () => {
    // Somebody scrolled: that place is meant, not the one before.
    if (pane.scrollTop === anchor.scrolled || isAtEnd()) putBack();
    // The fractions that scrolling leaves would add up.
    const [held] = anchor.places;
    if (held && isShown(held) && Math.abs(movedBy(anchor)) < ROUNDED_PX) {
      anchor = { ...anchor, scrolled: pane.scrollTop };
    } else follow();
  };
  /** The pane has become so much shorter that the browser had to scroll it back. */
  const isAtEnd = () =>
    pane.scrollTop < anchor.scrolled && pane.scrollTop + pane.clientHeight >= pane.scrollHeight - ROUNDED_PX;
  /** The browser cuts a fraction off: a tenth of a pixel up would be a whole one. */
  const scrollBy = (px: number) => {
    pane.scrollTop = Math.round(pane.scrollTop + px);
  };
  const putBack = () => {
    const moved = movedBy(anchor);
    // What comes takes the empty space first.
    if (moved > 0) setSpace(Math.max(0, space - moved));
    scrollBy(movedBy(anchor));
    const rest = movedBy(anchor);
    if (rest > -1) return;
    setSpace(space - rest);
    // A pane without such a space.
    if (movedBy(anchor) <= rest) setSpace(0);
  };
  const onScroll = () => {
    last = pane.scrollTop;
    if (pane.scrollTop !== anchor.scrolled) follow();
    // Out of view it is taken away, and nothing is seen to move.
    if (space === 0 || pane.scrollTop < space) return;
    const scrolled = pane.scrollTop - space;
    setSpace(0);
    if (anchor.places.some(isShown)) scrollBy(movedBy(anchor));
    else pane.scrollTop = scrolled;
    anchor = { ...anchor, scrolled: pane.scrollTop };
  };
  // Before the browser paints: an observer of changes is called as soon as they are made, one of sizes after the layout.
  const changes = new MutationObserver(correct);
  changes.observe(pane, { subtree: true, childList: true, characterData: true, attributes: true });
  const sizes = new ResizeObserver(correct);
  for (const child of pane.children) sizes.observe(child);
  const events = ['pointerdown', 'focusin', 'keydown', 'click'] as const;
  for (const event of events) pane.addEventListener(event, hold, true);
  pane.addEventListener('scroll', onScroll, { passive: true });
  correct();
  return () => {
    if (work) left.set(work, last);
    changes.disconnect();
    sizes.disconnect();
    for (const event of events) pane.removeEventListener(event, hold, true);
    pane.removeEventListener('scroll', onScroll);
    setSpace(0);
  };
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
