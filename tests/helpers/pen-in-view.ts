import type { Pen } from '../../src/editor/paint/pen.ts';
import { useAppStore } from '../../src/state/store.ts';
import { THEMES } from '../../src/theme/tokens.ts';

/** Returns a pen for the current view on a stage of this size, px, with letters of an average width. It only measures: it has no canvas. */
export function penInView(width: number, height: number): Pen {
  const { viewport, plan } = useAppStore.getState();
  return {
    ctx: null as never,
    view: viewport,
    measure: (text, { size }) => text.length * size * 0.55,
    theme: THEMES.paper,
    unit: plan.display.length,
    ratio: 1,
    area: { left: 0, top: 0, right: width, bottom: height },
    seen: { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 },
  };
}
