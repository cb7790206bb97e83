import type { XY } from '../../geometry/plan/model.ts';

/** What the menu of commands was opened for. */
export interface MenuAsk {
  /** The spot on the page that was pressed, CSS px: the menu does not cover it. */
  readonly page: XY;
  /** The spot on the plan; null if the menu is only for the selection. */
  readonly at: XY | null;
  /** Ids of the items that were pressed; empty on bare floor or paper. */
  readonly ids: readonly string[];
  /** A finger covers more of the page around the spot than a mouse does. */
  readonly byTouch: boolean;
}
