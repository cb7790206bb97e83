import { type KeyboardEvent, useCallback, useState } from 'react';

/** Arrow keys move the focus from card to card, Home and End to the first and last; Tab stops at one card only. */
export function useArrowKeys(ids: readonly string[]) {
  const [at, setAt] = useState('');
  const stop = ids.includes(at) ? at : (ids[0] ?? '');
  const onKeyDown = useCallback((event: KeyboardEvent<HTMLElement>) => {
    const here = event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('[data-plan]') : null;
    if (!here || event.ctrlKey || event.metaKey || event.altKey) return;
    const cards = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-plan]')];
    const next = nextCard(cards, here, event.key);
    if (!next) return;
    event.preventDefault();
    setAt(next.dataset.plan ?? '');
    next.focus();
    next.scrollIntoView({ block: 'nearest' });
  }, []);
  const onFocus = useCallback((event: React.FocusEvent<HTMLElement>) => {
    const id = event.target.closest('.plan-card')?.querySelector<HTMLElement>('[data-plan]')?.dataset.plan;
    if (id) setAt(id);
  }, []);
  return { stop, onKeyDown, onFocus };
}

function nextCard(cards: readonly HTMLElement[], here: HTMLElement, key: string): HTMLElement | undefined {
  const index = cards.indexOf(here);
  switch (key) {
    case 'ArrowRight':
      return cards[index + 1];
    case 'ArrowLeft':
      return cards[index - 1];
    case 'Home':
      return cards[0];
    case 'End':
      return cards.at(-1);
    case 'ArrowDown':
      return nearestRow(cards.slice(index + 1), here, 1);
    case 'ArrowUp':
      return nearestRow(cards.slice(0, index).reverse(), here, -1);
    default:
      return undefined;
  }
}

/** Returns the card of the next row below (1) or above (-1) that is nearest to the same column. */
function nearestRow(cards: readonly HTMLElement[], here: HTMLElement, way: 1 | -1): HTMLElement | undefined {
  const from = here.getBoundingClientRect();
  const beyond = cards
    .map((card) => ({ card, box: card.getBoundingClientRect() }))
    .filter(({ box }) => (box.top - from.top) * way > 4);
  const row = beyond.filter(({ box }) => Math.abs(box.top - (beyond[0]?.box.top ?? 0)) < 4);
  const off = ({ box }: { box: DOMRect }) => Math.abs(box.left - from.left);
  return row.reduce((best, each) => (best && off(best) <= off(each) ? best : each), row[0])?.card;
}
