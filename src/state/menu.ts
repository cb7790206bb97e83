import { create } from 'zustand';
import type { XY } from '../../geometry/plan/model.ts';

/** What a list of acts was asked for. */
export interface MenuAsk {
  /** The spot on the page that was pressed, CSS px: the list keeps off it. */
  readonly page: XY;
  /** The spot on the plan; null where only what is selected is meant. */
  readonly at: XY | null;
  /** What was pressed; empty on bare floor or paper. */
  readonly ids: readonly string[];
  /** A finger covers more of the page around the spot than a mouse does. */
  readonly byTouch: boolean;
}

/** The list of acts that is open; never in the plan, never in the history. */
export const useMenu = create<{ readonly ask: MenuAsk | null }>()(() => ({ ask: null }));

export const openMenu = (ask: MenuAsk): void => useMenu.setState({ ask });
export const closeMenu = (): void => useMenu.setState({ ask: null });
