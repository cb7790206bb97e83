import { create } from 'zustand';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { remembered } from '../../geometry/remembered.ts';
import { dimensionsAbout, faceDimensions, type RunningDimension } from '../../geometry/running-dimensions.ts';
import { selectModel } from '../state/selectors.ts';
import type { AppState } from '../state/store.ts';
import { toScreen, type Viewport } from '../state/viewport.ts';
import { writtenDimensions } from './paint/names/sheet-names.ts';

/** Lengths on the sheet that are pressed to be corrected, and the one whose field is open. */
export const useFigure = create<{ readonly open: string | null }>()(() => ({ open: null }));

/** How large a figure is to be hit, px: WCAG 2.2 SC 2.5.8 asks for 24, a finger for more. */
const TARGET_PX = { mouse: 24, touch: 44 } as const;
/** How far the string of a wall's openings stands off its face, px. */
export const STRING_OFF_PX = 14;

let about: { readonly model: LevelModel; readonly id: string; readonly found: readonly RunningDimension[] } | null =
  null;

/** Those about the one thing that is selected; none while a tool or a gesture is under way. A detector has its clearances instead. */
export function selectFigures(state: AppState): readonly RunningDimension[] {
  const [id] = state.selection;
  if (!id || state.selection.length !== 1 || state.tool.kind !== 'select' || state.draft || state.live) return NONE;
  const model = selectModel(state);
  if (model.level.detectors.some((detector) => detector.id === id)) return NONE;
  if (about?.model !== model || about.id !== id) about = { model, id, found: calm(dimensionsAbout(model, id)) };
  return about.found;
}
const NONE: readonly RunningDimension[] = [];

/** Of the free lengths to two opposite walls the shorter one: two tapes set a thing out. */
function calm(found: readonly RunningDimension[]): readonly RunningDimension[] {
  const lengthOf = (side: string) => found.find((each) => each.of === 'gap' && each.side === side)?.length ?? Infinity;
  const opposite = { left: 'right', right: 'left', up: 'down', down: 'up' } as const;
  return found.filter((each) => each.of !== 'gap' || each.length <= lengthOf(opposite[each.side]));
}

/** The ends and the middle of a figure's line on screen, px. */
export function figurePlace(view: Viewport, { line, inward }: RunningDimension): { a: XY; b: XY; middle: XY } {
  const [a, b] = line.map((point): XY => {
    const [x, y] = toScreen(view, point);
    return [x + inward[0] * STRING_OFF_PX, y + inward[1] * STRING_OFF_PX];
  }) as [XY, XY];
  return { a, b, middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] };
}

/** The figure at a point of the screen, those about what is selected first. */
export function figureAt(state: AppState, at: XY, touch: boolean): RunningDimension | null {
  const half = TARGET_PX[touch ? 'touch' : 'mouse'] / 2;
  const near = (middle: XY, across = half) =>
    Math.abs(middle[0] - at[0]) <= Math.max(half, across) && Math.abs(middle[1] - at[1]) <= half;
  const own = selectFigures(state).find((figure) => near(figurePlace(state.viewport, figure).middle));
  if (own) return own;
  if (state.tool.kind !== 'select') return null;
  const { x, y } = state.viewport;
  return writtenDimensions().find(({ middle }) => near([middle[0] + x, middle[1] + y]))?.dimension ?? null;
}

/** Where the middle of a figure is on screen, px; that of its line for one that found no room on the sheet. */
export function placeOfFigure({ viewport }: AppState, figure: RunningDimension): XY {
  const written = writtenDimensions().find(({ dimension }) => dimension.key === figure.key);
  if (written) return [written.middle[0] + viewport.x, written.middle[1] + viewport.y];
  return figurePlace(viewport, figure).middle;
}

/** The same objects for the same drawing: what is open is compared by identity. */
const facesOf = remembered(faceDimensions);

/** All that can be corrected now, in their order: about what is selected, else the rooms. */
export function selectOpenable(state: AppState): readonly RunningDimension[] {
  const own = selectFigures(state);
  return own.length > 0 ? own : facesOf(selectModel(state));
}

/** The figure of that key as it measures now. */
export function figureOf(state: AppState, key: string): RunningDimension | null {
  return [...selectFigures(state), ...facesOf(selectModel(state))].find((each) => each.key === key) ?? null;
}

/** Opens the field of the next figure, or the one before; answers false where there is none. */
export function openNextFigure(state: AppState, step: 1 | -1): boolean {
  const list = selectOpenable(state);
  if (list.length === 0) return false;
  const now = list.findIndex(({ key }) => key === useFigure.getState().open);
  const next = now < 0 && step < 0 ? list.length - 1 : (now + step + list.length) % list.length;
  useFigure.setState({ open: list[next]?.key ?? null });
  return true;
}
