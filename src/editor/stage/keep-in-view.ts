import type { XY } from '../../../geometry/plan/model.ts';
import { useAppStore } from '../../state/store.ts';
import { pannedBy, toScreen } from '../../state/viewport.ts';

/** The keyboard's cross stays this far inside the stage, px: the sheet pans under it. */
const EDGE_PX = 60;

/** Pans the sheet just far enough that the point of the plan is in view. */
export function keepInView(at: XY): void {
  const { viewport, stageSize, setViewport } = useAppStore.getState();
  const [x, y] = toScreen(viewport, at);
  const inside = (value: number, size: number) => Math.min(Math.max(value, EDGE_PX), size - EDGE_PX);
  const [dx, dy] = [inside(x, stageSize.width) - x, inside(y, stageSize.height) - y];
  if (dx !== 0 || dy !== 0) setViewport(pannedBy(viewport, dx, dy));
}

/** Whether a point of the plan is on the stage. */
export function isInView(at: XY): boolean {
  const { viewport, stageSize } = useAppStore.getState();
  const [x, y] = toScreen(viewport, at);
  return x >= 0 && y >= 0 && x <= stageSize.width && y <= stageSize.height;
}
