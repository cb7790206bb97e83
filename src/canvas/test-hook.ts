import type Konva from 'konva';
import type { XY } from '../../geometry/plan/model.ts';
import { useAppStore } from '../state/store.ts';
import { toPlan, toScreen } from '../state/viewport.ts';

/** What the browser tests reach the sheet by. Points of the screen are CSS pixels of the page. */
interface StillspotHook {
  readonly store: typeof useAppStore;
  readonly toScreen: (x: number, y: number) => XY;
  readonly toPlan: (px: number, py: number) => XY;
  readonly stage: () => Konva.Stage | null;
}

declare global {
  interface Window {
    __stillspot?: StillspotHook;
  }
}

/** Hangs the hook on the window, in every build; answers what takes it away. */
export function exposeForTests(sheet: HTMLElement, stage: () => Konva.Stage | null): () => void {
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
    stage,
  };
  return () => {
    delete window.__stillspot;
  };
}
