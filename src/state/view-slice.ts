import { runningDimensions } from '../../geometry/dimension/running-dimensions.ts';
import { levelExtent, unionExtent } from '../../geometry/level/level-extent.ts';
import { tracingExtent } from '../../geometry/level/tracing-extent.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import { type Extent, ringExtent } from '../../geometry/plane/extent.ts';
import { dimensionStepPx, minTargetPx } from '../theme/target-size.ts';
import { DIMENSION_PX, TYPE_PX } from '../theme/tokens.ts';
import type { AppState, GetState, SetState, ViewActions, ViewState } from './app-state.ts';
import { selectBelow, selectLevel, selectLevelBar, selectModel } from './selectors.ts';
import { fitted, keptOnStage, type Margins, pannedBy, toScreen, type Viewport, zoomedAt } from './viewport.ts';

/** An empty plan shows the size of a basement: 40 by 30 ft, mm. */
const EMPTY_EXTENT = { minX: 0, minY: 0, maxX: 12192, maxY: 9144 } as const;
/** Margin on each side, px: two rows of dimensions, a touch target apart. It is less on a small stage, so that the plan gets most of it. */
const fitMarginPx = (size: number) => Math.min(36 + minTargetPx(), Math.max(LEAST_MARGIN_PX, size * MARGIN_SHARE));
const LEAST_MARGIN_PX = 30;
const MARGIN_SHARE = 0.17;
const LEVEL_BAR_PX = 48;

/** How the plan is viewed. */
export function createViewSlice(set: SetState, get: GetState): Omit<ViewState, 'levelId'> & ViewActions {
  return {
    viewport: { scale: 0.08, x: 80, y: 80 },
    wholeInView: true,
    stageSize: { width: 0, height: 0 },
    showBelow: true,
    sitHeight: USUAL_DETECTOR.base,
    theme: 'paper',
    setViewport: (viewport) => set({ viewport: withPlanInView(viewport, get()), wholeInView: false }),
    setStageSize: (stageSize) => {
      const before = get();
      set({ stageSize });
      if (before.wholeInView) get().fit();
      else set({ viewport: withPlanInView(resized(before, get()), get()) });
    },
    setShowBelow: (showBelow) => set({ showBelow }),
    setSitHeight: (sitHeight) => set({ sitHeight }),
    setTheme: (theme) => set({ theme }),
    fit: () => {
      set({ viewport: wholeLevel(get()), wholeInView: true });
    },
    zoomBy: (factor) => {
      const { viewport, stageSize } = get();
      get().setViewport(zoomedAt(viewport, [stageSize.width / 2, stageSize.height / 2], factor));
    },
  };
}

/** Largest share of the stage that is left free for dimensions on each side: on a phone in landscape the plan comes first. */
const MOST_ROWS = 0.18;

/** Returns the viewport with the whole level in it. */
function wholeLevel(state: AppState): Viewport {
  const { width, height } = state.stageSize;
  // Below the dimensions there is space for the reason why this is not the level to test.
  const below = selectLevelBar(state) ? LEVEL_BAR_PX : 0;
  const [across, down] = [fitMarginPx(width), fitMarginPx(height)];
  const rows = dimensionRows(state);
  const margin = (usual: number, row: number, size: number) => Math.max(usual, Math.min(row, MOST_ROWS * size));
  const margins: Margins = {
    left: margin(across, rows.left, width),
    top: margin(down, rows.top, height),
    right: margin(across, rows.right, width),
    bottom: margin(down, rows.bottom, height),
  };
  return fitted(drawnExtent(state) ?? EMPTY_EXTENT, { width, height: height - below }, margins);
}

/** Returns how far the lines of dimensions reach beyond the drawing on each side, with their figures, px. */
function dimensionRows(state: AppState): Margins {
  const reach = { left: 0, top: 0, right: 0, bottom: 0 };
  for (const { wallBehind, beyondString, outward } of runningDimensions(selectModel(state))) {
    if (wallBehind === null) continue;
    const far = DIMENSION_PX.outside + (beyondString ? dimensionStepPx() : 0) + TYPE_PX.fine;
    const [x, y] = [outward[0] * far, outward[1] * far];
    reach.left = Math.max(reach.left, -x);
    reach.right = Math.max(reach.right, x);
    reach.top = Math.max(reach.top, -y);
    reach.bottom = Math.max(reach.bottom, y);
  }
  return reach;
}

/**
 * Returns the viewport for a stage of another size: the same spot in its middle, at the same scale. After a rotation of the device the
 * scale keeps its ratio to that of the whole level; a view that was only panned at the scale of the whole level shows all of it.
 */
function resized(before: AppState, now: AppState): Viewport {
  const { stageSize: from, viewport } = before;
  const { stageSize: to } = now;
  const centered = pannedBy(viewport, (to.width - from.width) / 2, (to.height - from.height) / 2);
  const isRotated =
    from.width < from.height !== to.width < to.height && from.width !== to.width && from.height !== to.height;
  if (!isRotated) return centered;
  const [whole, was] = [wholeLevel(now), wholeLevel(before)];
  if (viewport.scale === was.scale) return whole;
  return zoomedAt(centered, [to.width / 2, to.height / 2], whole.scale / was.scale);
}

/** Returns the viewport, moved if necessary so that part of the plan or of the chain that is being drawn stays on the stage. */
function withPlanInView(viewport: Viewport, state: AppState): Viewport {
  const { chain, stageSize } = state;
  const extent = drawnExtent(state) ?? EMPTY_EXTENT;
  const whole = chain.corners.length > 0 ? unionExtent(extent, ringExtent(chain.corners)) : extent;
  return stageSize.width > 0 ? keptOnStage(viewport, whole, stageSize) : viewport;
}

/**
 * Returns the extent of everything drawn on the level, with the chain that is being drawn. An empty level has the extent of its tracing
 * image, or of the level below; null if there is neither.
 */
function drawnExtent(state: AppState): Extent | null {
  const { corners } = state.chain;
  const chain = corners.length > 0 ? ringExtent(corners) : null;
  const level = levelExtent(selectLevel(state));
  if (level && chain) return unionExtent(level, chain);
  const below = selectBelow(state);
  if (level || corners.length > 1) return level ?? chain;
  const { tracing } = selectLevel(state);
  return tracing?.shown ? tracingExtent(tracing) : below && levelExtent(below.level);
}

/** Returns whether any part of the drawing of the level is on the stage; true if nothing is drawn. */
export function showsAnyOf(state: AppState): boolean {
  const extent = drawnExtent(state);
  if (!extent) return true;
  const { viewport, stageSize } = state;
  const [left, top] = toScreen(viewport, [extent.minX, extent.minY]);
  const [right, bottom] = toScreen(viewport, [extent.maxX, extent.maxY]);
  return right > 0 && bottom > 0 && left < stageSize.width && top < stageSize.height;
}
