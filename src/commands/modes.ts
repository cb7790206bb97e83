import { isTyping } from '../editor/input/typing.ts';
import { useLengths } from '../editor/lengths/store.ts';
import { SHEET_ID } from '../editor/open-menu.ts';
import { isGestureUnderWay } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { isPlanInView, usePanels } from './panels.ts';

/** Context of a key press: each mode has its own shortcuts. */
export type Mode =
  /** A dialog is open, or loading. */
  | 'dialog'
  | 'menu'
  /** A field has the focus. */
  | 'field'
  | 'tracing-frame'
  /** A length on the sheet waits for its first digit. */
  | 'length'
  /** A run of walls is being drawn. */
  | 'drawing'
  /** A tool other than the selection tool is active. */
  | 'tool'
  /** Something is dragged or reshaped. */
  | 'gesture'
  /** The sheet or nothing has the focus: elsewhere buttons and lists use arrows and Enter. */
  | 'sheet'
  | 'page'
  /** The page of a stage covers the plan: no key may change the hidden plan. */
  | 'form';

/** Returns the modes for a key press on `target`, the one with the highest priority first. */
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

/** Returns whether a key press on `target` is for the sheet. */
export function isOnSheet(target: EventTarget | null): boolean {
  return target === document.body || (target instanceof Element && target.id === SHEET_ID);
}
