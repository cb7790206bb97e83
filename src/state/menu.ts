import type { XY } from '../../geometry/plan/model.ts';

/** What the menu of commands was asked for. */
export interface MenuAsk {
  /** The spot on the page that was pressed, CSS px: the menu keeps off it. */
  readonly page: XY;
  /** The spot on the plan; null where only what is selected is meant. */
  readonly at: XY | null;
  /** What was pressed; empty on bare floor or paper. */
  readonly ids: readonly string[];
  /** A finger covers more of the page around the spot than a mouse does. */
  readonly byTouch: boolean;
}
