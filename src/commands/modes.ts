import { isTyping } from '../editor/input/typing.ts';
import { useLengths } from '../editor/lengths/store.ts';
import { SHEET_ID } from '../editor/open-menu.ts';
import { isGestureUnderWay } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { isPlanInView, usePanels } from './panels.ts';

/** What key presses are for: each mode has shortcuts of its own. */
export type Mode =
  /** Something stands over the page. */
  | 'dialog'
  | 'menu'
  /** Something is typed into a field. */
  | 'field'
  | 'tracing-frame'
  /** A length on the sheet waits for its first digit. */
  | 'length'
  /** A run of walls is being drawn. */
  | 'drawing'
  /** Another tool than the one that selects. */
  | 'tool'
  /** Something is dragged or reshaped. */
  | 'gesture'
  /** The sheet has the focus, or nothing has: elsewhere arrows and Enter belong to buttons and lists. */
  | 'sheet'
  | 'page'
  /** The page of a stage covers the plan: no key may change what is not in view. */
  | 'form';

/** The modes of the page for a key press there, the one that is asked first in front. */
export function modesAt(target: EventTarget | null): readonly Mode[] {
  if (isDialogOpen() || usePanels.getState().dialog) return ['dialog'];
  if (useAppStore.getState().menu) return ['menu'];
  const state = useAppStore.getState();
  if (!isPlanInView(usePanels.getState())) return isTyping(target) ? ['field'] : ['form'];
  const { open } = useLengths.getState();
  const typing = isTyping(target);
  const conditions: readonly (readonly [Mode, boolean])[] = [
    ['tracing-frame', useAppStore.getState().tracingFrameOpen],
    ['field', typing],
    ['length', !typing && open !== null],
    ['drawing', !typing && state.chain.corners.length > 0],
    ['tool', !typing && state.tool.kind !== 'select'],
    ['gesture', !typing && isGestureUnderWay(state)],
    ['sheet', !typing && isOnSheet(target)],
    ['page', !typing],
  ];
  return conditions.filter(([, holds]) => holds).map(([mode]) => mode);
}

export function isDialogOpen(): boolean {
  return document.querySelector('dialog[open]') !== null;
}

/** Whether a key press there is for the sheet. */
export function isOnSheet(target: EventTarget | null): boolean {
  return target === document.body || (target instanceof Element && target.id === SHEET_ID);
}
