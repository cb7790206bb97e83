import { type Extent, ringExtent } from '../../geometry/body.ts';
import { joined, levelExtent } from '../../geometry/level-extent.ts';
import { selectLevel } from './selectors.ts';
import type { AppState } from './store.ts';
import type { ViewActions } from './view-slice.ts';
import { fitted, zoomedAt } from './viewport.ts';

/** An empty sheet shows a basement's breadth: 40 by 30 ft. */
const EMPTY_SHEET = { minX: 0, minY: 0, maxX: 12192, maxY: 9144 } as const;
/** Room about the plan for its dimensions. */
const FIT_MARGIN_PX = 58;

type Set = (change: Partial<AppState>) => void;

export function createViewActions(set: Set, get: () => AppState): ViewActions {
  return {
    setTool: (tool) => set({ tool, message: '', draft: null, live: null }),
    select: (ids, how = 'replace') => set({ selection: how === 'replace' ? ids : toggled(get().selection, ids) }),
    setHover: (hover) => set({ hover }),
    setViewport: (viewport) => set({ viewport }),
    setStageSize: (stageSize) => set({ stageSize }),
    setSnap: (snap) => set({ snap }),
    say: (message) => set({ message }),
    setLive: (live) => set({ live }),
    setChain: (chain) => set({ chain }),
    setDraft: (draft) => set({ draft }),
    setSitHeight: (sitHeight) => set({ sitHeight }),
    setTheme: (theme) => set({ theme }),
    fit: () => {
      const state = get();
      set({ viewport: fitted(drawnExtent(state) ?? EMPTY_SHEET, state.stageSize, FIT_MARGIN_PX) });
    },
    zoomBy: (factor) => {
      const { viewport, stageSize } = get();
      set({ viewport: zoomedAt(viewport, [stageSize.width / 2, stageSize.height / 2], factor) });
    },
  };
}

/** All that is drawn on the level, walls that are not closed yet included; null for bare paper. */
function drawnExtent(state: AppState): Extent | null {
  const { corners } = state.chain;
  const chain = corners.length > 0 ? ringExtent(corners) : null;
  const level = levelExtent(selectLevel(state));
  return level && chain ? joined(level, chain) : (level ?? (corners.length > 1 ? chain : null));
}

/** Ids that are selected are taken out, the others put in. */
function toggled(selection: readonly string[], ids: readonly string[]): readonly string[] {
  const kept = selection.filter((id) => !ids.includes(id));
  return [...kept, ...ids.filter((id) => !selection.includes(id))];
}
