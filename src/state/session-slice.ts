import type { GetState, SessionActions, SessionState, SetState } from './app-state.ts';
import { setDoubts } from './second-opinion.ts';
import { nextSunVersion } from './sun-version.ts';
import { SELECT_TOOL } from './tool.ts';
import { NO_CHAIN } from './wall-chain.ts';
import { FIRST_WALL_SETTINGS } from './wall-settings.ts';

/** The session of work: tool, selection, the gesture under way, messages. */
export function createSessionSlice(set: SetState, get: GetState): SessionState & SessionActions {
  return {
    tool: SELECT_TOOL,
    keepTool: false,
    selection: [],
    hover: null,
    snap: true,
    draggedDetector: null,
    chain: NO_CHAIN,
    wallSettings: FIRST_WALL_SETTINGS,
    roomAsked: null,
    previewPlan: null,
    message: '',
    remark: null,
    second: null,
    menu: null,
    tracingFrameOpen: false,
    letterKeysAnywhere: true,
    unlocked: [],
    walk: { by: '', at: null },
    setTool: (tool) =>
      set({ tool, keepTool: false, message: '', previewPlan: null, draggedDetector: null, roomAsked: null }),
    setKeepTool: (keepTool) => set({ keepTool }),
    select: (ids, how = 'replace') => set({ selection: how === 'replace' ? ids : toggled(get().selection, ids) }),
    setHover: (hover) => set({ hover }),
    setSnap: (snap) => set({ snap }),
    setDraggedDetector: (draggedDetector) => set({ draggedDetector }),
    setChain: (chain) => set({ chain }),
    setWallSettings: (wallSettings) => set({ wallSettings }),
    askRoom: (roomAsked) => set({ roomAsked }),
    setPreviewPlan: (previewPlan) => set({ previewPlan }),
    say: (message, action) => set(action ? { message, remark: { words: message, action } } : { message }),
    unlock: (ids) => set({ unlocked: [...new Set([...get().unlocked, ...ids])] }),
    lock: (id) => set({ unlocked: get().unlocked.filter((each) => each !== id) }),
    sunChanged: () => {
      nextSunVersion();
      set({});
    },
    setSecond: (second) => {
      setDoubts(second.doubts);
      set({ second });
    },
    openMenu: (menu) => set({ menu }),
    closeMenu: () => set({ menu: null }),
    setTracingFrameOpen: (tracingFrameOpen) => set({ tracingFrameOpen }),
    setLetterKeysAnywhere: (letterKeysAnywhere) => set({ letterKeysAnywhere }),
    setWalk: (change) => set({ walk: { ...get().walk, ...change } }),
  };
}

/** Removes the ids that are selected, and adds the others. */
function toggled(selection: readonly string[], ids: readonly string[]): readonly string[] {
  const kept = selection.filter((id) => !ids.includes(id));
  return [...kept, ...ids.filter((id) => !selection.includes(id))];
}
