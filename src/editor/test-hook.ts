import type { XY } from '../../geometry/plan/model.ts';
import { useAppStore } from '../state/store.ts';
import { toPlan, toScreen } from '../state/viewport.ts';
import { useSketch } from './overlay/sketch.ts';
import { isFramePending } from './stage/frame-loop.ts';
import { type PaintCounts, paintCounts } from './stage/paint-counts.ts';
import { useTape } from './tape/tape-store.ts';

/** What the browser tests reach the sheet by. Points of the screen are CSS pixels of the page. */
interface StillspotHook {
  readonly store: typeof useAppStore;
  readonly toScreen: (x: number, y: number) => XY;
  readonly toPlan: (px: number, py: number) => XY;
  /** What was painted since the page was opened. */
  readonly paintCounts: () => PaintCounts;
  /** Resolves when the sheet shows what was done last: until then nobody can press it. In a movement, after a few frames. */
  readonly painted: () => Promise<void>;
  /** The laser tape: tests give its keys all the time that a busy machine needs. */
  readonly tape: typeof useTape;
  /** Whether a detector is on its way to where a button has moved it. */
  readonly gliding: () => boolean;
}

declare global {
  interface Window {
    __stillspot?: StillspotHook;
  }
}

const FEW_FRAMES = 4;

/** The build that the browser tests and the benchmarks ask for: `vite build --mode test-hook`. Users' builds have no hook. */
const HAS_HOOK = import.meta.env.MODE === 'test-hook';

/** Hangs the hook on the window where the build has one. Returns what takes it away. */
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
    gliding: () => useSketch.getState().glide !== null,
  };
  return () => {
    delete window.__stillspot;
  };
}
