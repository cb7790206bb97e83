import type { Pen } from '../../../../src/editor/paint/pen.ts';
import { useAppStore } from '../../../../src/state/store.ts';
import type { SizePx, Viewport } from '../../../../src/state/viewport.ts';
import { THEMES } from '../../../../src/theme/tokens.ts';

/** A pen that draws nothing, with letters of a middling width. */
export const penAt = (view: Viewport, stage: SizePx): Pen => ({
  ctx: null as never,
  view,
  measure: (text, { size }) => text.length * size * 0.55,
  theme: THEMES.paper,
  unit: useAppStore.getState().plan.display.length,
  ratio: 1,
  area: { left: 0, top: 0, right: stage.width, bottom: stage.height },
  seen: { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 },
});
