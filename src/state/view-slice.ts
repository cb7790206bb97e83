import { tracingExtent } from '../../geometry/edit/tracing.ts';
import { levelExtent, unionExtent } from '../../geometry/level/level-extent.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import { type Extent, ringExtent } from '../../geometry/plane/body.ts';
import { minTargetPx } from '../theme/target-size.ts';
import type { AppState, GetState, SetState, ViewActions, ViewState } from './app-state.ts';
import { selectBelow, selectLevel, selectLevelBar } from './selectors.ts';
import { fitted, keptOnStage, pannedBy, toScreen, type Viewport, zoomedAt } from './viewport.ts';

/** An empty plan shows the size of a basement: 40 by 30 ft, mm. */
const EMPTY_EXTENT = { minX: 0, minY: 0, maxX: 12192, maxY: 9144 } as const;
/** Space around the plan for two rows of dimensions, a target apart. */
const fitMarginPx = () => 36 + minTargetPx();
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
      const { stageSize: before, viewport, wholeInView } = get();
      const [dx, dy] = [(stageSize.width - before.width) / 2, (stageSize.height - before.height) / 2];
      set({ stageSize });
      if (wholeInView) get().fit();
      else set({ viewport: withPlanInView(pannedBy(viewport, dx, dy), get()) });
    },
    setShowBelow: (showBelow) => set({ showBelow }),
    setSitHeight: (sitHeight) => set({ sitHeight }),
    setTheme: (theme) => set({ theme }),
    fit: () => {
      const state = get();
      const { width, height } = state.stageSize;
      // Below the dimensions there is space for the reason why this is not the level to test.
      const below = selectLevelBar(state) ? LEVEL_BAR_PX : 0;
      const viewport = fitted(drawnExtent(state) ?? EMPTY_EXTENT, { width, height: height - below }, fitMarginPx());
      set({ viewport, wholeInView: true });
    },
    zoomBy: (factor) => {
      const { viewport, stageSize } = get();
      get().setViewport(zoomedAt(viewport, [stageSize.width / 2, stageSize.height / 2], factor));
    },
  };
}

/** Returns the viewport moved back so far that the plan, or what is being drawn of it, is not lost. */
function withPlanInView(viewport: Viewport, state: AppState): Viewport {
  const { chain, stageSize } = state;
  const extent = drawnExtent(state) ?? EMPTY_EXTENT;
  const whole = chain.corners.length > 0 ? unionExtent(extent, ringExtent(chain.corners)) : extent;
  return stageSize.width > 0 ? keptOnStage(viewport, whole, stageSize) : viewport;
}

/** Returns the extent of everything drawn on the level, with walls that are not closed yet; null for an empty level. */
function drawnExtent(state: AppState): Extent | null {
  const { corners } = state.chain;
  const chain = corners.length > 0 ? ringExtent(corners) : null;
  const level = levelExtent(selectLevel(state));
  if (level && chain) return unionExtent(level, chain);
  // An empty level is as large as the picture that is drawn over, or as the level below.
  const below = selectBelow(state);
  if (level || corners.length > 1) return level ?? chain;
  const { tracing } = selectLevel(state);
  return tracing?.shown ? tracingExtent(tracing) : below && levelExtent(below.level);
}

/** Returns whether any of what is drawn on the level lies on the stage; true for an empty level. */
export function showsAnyOf(state: AppState): boolean {
  const extent = drawnExtent(state);
  if (!extent) return true;
  const { viewport, stageSize } = state;
  const [left, top] = toScreen(viewport, [extent.minX, extent.minY]);
  const [right, bottom] = toScreen(viewport, [extent.maxX, extent.maxY]);
  return right > 0 && bottom > 0 && left < stageSize.width && top < stageSize.height;
}
