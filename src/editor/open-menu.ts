import type { XY } from '../../geometry/plan/model.ts';
import { anchorOf, type Hit } from '../../geometry/snap/pick.ts';
import { toPlan, toScreen } from '../state/viewport.ts';
import { useSketch } from './overlay/sketch.ts';
import { currentLevel, store } from './tools/tool-context.ts';
import type { ToolPoint } from './tools/tool-controller.ts';

/** The element that the sheet is drawn in. */
export const SHEET_ID = 'sheet-of-plan';

/** Opens the menu for what was pressed; for a selected item, the menu is for the whole selection. */
export function openMenuFor(hit: Hit | undefined, { plan, screen, touch }: ToolPoint): void {
  const { selection, select } = store();
  if (hit && !selection.includes(hit.id)) select([hit.id]);
  if (!hit && selection.length > 0) select([]);
  store().openMenu({ page: onPage(screen), at: plan, ids: hit ? store().selection : [], byTouch: touch });
}

/** Opens the menu by key or by a button: for the selection, else for the spot under the keyboard's cross or in the middle of the sheet. */
export function openMenuByKey(): void {
  const { selection, viewport, stageSize } = store();
  const { cross } = useSketch.getState();
  const [first] = selection;
  const anchor = first ? anchorOf(currentLevel(), first) : cross;
  const middle: XY = [stageSize.width / 2, stageSize.height / 2];
  const screen = anchor ? inside(toScreen(viewport, anchor)) : middle;
  store().openMenu({ page: onPage(screen), at: anchor ?? toPlan(viewport, middle), ids: selection, byTouch: false });
}

/**
 * Opens the menu from a row of a list beside the sheet, by press or by key: for that item, or for the whole selection if it is selected.
 */
export function openMenuOfRow(id: string, row: HTMLElement): void {
  const { selection, select } = store();
  if (!selection.includes(id)) select([id]);
  const { left, top, height } = row.getBoundingClientRect();
  store().openMenu({ page: [left, top + height / 2], at: null, ids: store().selection, byTouch: false });
}

/** The selection may be off the stage. */
function inside([x, y]: XY): XY {
  const { width, height } = store().stageSize;
  return [Math.min(Math.max(x, 0), width), Math.min(Math.max(y, 0), height)];
}

function onPage([x, y]: XY): XY {
  const { left = 0, top = 0 } = document.getElementById(SHEET_ID)?.getBoundingClientRect() ?? {};
  return [left + x, top + y];
}
