interface Anchor {
  /** A control and what it stands in, inside out, each with its top on the page, px. */
  readonly places: readonly { readonly element: Element; readonly top: number }[];
  /** Scroll position that the tops belong to, px. */
  readonly scrolled: number;
}

const NO_ANCHOR: Anchor = { places: [], scrolled: 0 };

/** The empty space at the top of a pane, below its heading: its style sheet says where. */
const SPACE = '--kept-space';

/**
 * Keeps a control that was pressed where it is while what stands above it grows or shrinks: the scroll position follows before the page
 * is painted, and at the top of the pane, where nothing is left to scroll, empty space takes the place of what went. Where the control
 * itself goes, what it stood in keeps its place. Returns what ends that.
 */
export function keepPressed(pane: HTMLElement): () => void {
  let anchor = NO_ANCHOR;
  let space = 0;
  const setSpace = (px: number) => {
    if (px === space) return;
    space = px;
    pane.style.setProperty(SPACE, `${px}px`);
  };
  const hold = ({ target }: Event) => {
    if (target instanceof Element) anchor = anchorAt(target, pane);
  };
  const follow = () => {
    const first = anchor.places.find(isShown);
    if (!first) setSpace(0);
    anchor = first ? anchorAt(first.element, pane) : NO_ANCHOR;
  };
  const correct = () => {
    // Somebody scrolled: that place is meant, not the one before.
    if (pane.scrollTop === anchor.scrolled) putBack();
    follow();
  };
  const putBack = () => {
    const moved = movedBy(anchor);
    // What comes takes the empty space first.
    if (moved > 0) setSpace(Math.max(0, space - moved));
    pane.scrollTop += movedBy(anchor);
    const rest = movedBy(anchor);
    if (rest > -1) return;
    setSpace(space - rest);
    // A pane without such a space.
    if (movedBy(anchor) <= rest) setSpace(0);
  };
  const onScroll = () => {
    // Out of view it is taken away, and nothing is seen to move.
    if (space > 0 && pane.scrollTop >= space) {
      pane.scrollTop -= space;
      setSpace(0);
    }
    follow();
  };
  // Before the browser paints: an observer of changes is called as soon as they are made, one of sizes after the layout.
  const changes = new MutationObserver(correct);
  changes.observe(pane, { subtree: true, childList: true, characterData: true, attributes: true });
  const sizes = new ResizeObserver(correct);
  for (const child of pane.children) sizes.observe(child);
  const events = ['pointerdown', 'focusin', 'keydown', 'click'] as const;
  for (const event of events) pane.addEventListener(event, hold, true);
  pane.addEventListener('scroll', onScroll, { passive: true });
  return () => {
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
