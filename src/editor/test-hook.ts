import type { XY } from '../../geometry/plan/model.ts';
import { restOfStart } from '../platform/first-picture.ts';
import { useAppStore } from '../state/store.ts';
import { toPlan, toScreen } from '../state/viewport.ts';
import { useSketch } from './overlay/sketch.ts';
import { isFramePending } from './stage/frame-loop.ts';
import { type PaintCounts, paintCounts } from './stage/paint-counts.ts';
import { useTape } from './tape/tape-store.ts';

/** The access of browser tests to the sheet. Screen points are CSS px of the page. */
interface StillspotHook {
  readonly store: typeof useAppStore;
  readonly toScreen: (x: number, y: number) => XY;
  readonly toPlan: (px: number, py: number) => XY;
  /** What was painted since the page was opened. */
  readonly paintCounts: () => PaintCounts;
  /** Resolves when the sheet shows the last change, so that a test can press it; during an animation, after a few frames. */
  readonly painted: () => Promise<void>;
  /** The laser tape: tests lengthen its gap, since a busy machine may delay keys. */
  readonly tape: typeof useTape;
  /** Resolves when what comes after the first picture is loaded: the keys of the clipboard and of the tape, rarer tools, direct sun. */
  readonly started: () => Promise<void>;
  /** Whether the move of a detector is being animated. */
  readonly gliding: () => boolean;
}

declare global {
  interface Window {
    __stillspot?: StillspotHook;
  }
}

const FEW_FRAMES = 4;

/** Whether this is the build for browser tests and benchmarks: `vite build --mode test-hook`. Users' builds have no hook. */
const HAS_HOOK = import.meta.env.MODE === 'test-hook';

/** Adds the hook to the window if the build has one. Returns a function that removes it. */
export function exposeForTests(sheet: HTMLElement): () => void {
  if (!HAS_HOOK) return () => undefined;
  window.__stillspot = {
    store: useAppStore,
    toScreen: (x, y) => {
      const { left, top } = sheet.getBoundingClientRect();
      const [sx, sy] = toScreen(useAppStore.getState().viewport, [x, y]);
      return [sx + left, sy + top];
    },
    toPlan: (px, py) => {
      const { left, top } = sheet.getBoundingClientRect();
      return toPlan(useAppStore.getState().viewport, [px - left, py - top]);
    },
    paintCounts,
    painted: async () => {
      for (let frame = 0; frame < FEW_FRAMES && isFramePending(); frame++) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
    },
    tape: useTape,
    started: restOfStart,
    gliding: () => useSketch.getState().glide !== null,
  };
  return () => {
    delete window.__stillspot;
  };
}
