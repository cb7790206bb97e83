import type { CDPSession, Page } from 'playwright-core';
import type { OpenSheet } from './stand.ts';

/** Live bytes of the page's heap after a garbage collection. */
export interface WalkFigures {
  readonly acts: number;
  readonly before: number;
  readonly after: number;
  /** Duration of the walk, s. */
  readonly took: number;
}

/**
 * Acts that fill the bounded caches: undo steps, models of their levels, measured words, tiles. After 700 the heap was still 20 MB below
 * where it stays.
 */
export const WARM_UP = 1900;

/** An hour of editing by a fast person, done as fast as the page can. */
export async function walk({ page, cdp }: OpenSheet, acts: number): Promise<WalkFigures> {
  await act(page, 0, WARM_UP);
  const before = await liveBytes(cdp, page);
  const start = performance.now();
  await act(page, WARM_UP, acts);
  const took = (performance.now() - start) / 1000;
  return { acts, before, after: await liveBytes(cdp, page), took };
}

async function liveBytes(cdp: CDPSession, page: Page): Promise<number> {
  await page.waitForTimeout(1500);
  for (let i = 0; i < 3; i++) await cdp.send('HeapProfiler.collectGarbage');
  const { usedSize } = await cdp.send('Runtime.getHeapUsage');
  return usedSize;
}

/** Acts of every kind in turn, with a frame after each, so that their effects are complete. Things that are added are removed again. */
async function act(page: Page, from: number, count: number): Promise<void> {
  await page.evaluate(
    async ({ first, times }) => {
      const hook = window.__stillspot;
      if (!hook) throw new Error('the page has no sheet');
      const state = () => hook.store.getState();
      const level = () => {
        const { plan, levelId } = state();
        const found = plan.levels.find(({ id }) => id === levelId) ?? plan.levels[0];
        if (!found) throw new Error('the plan has no level');
        return found;
      };
      const frame = () => new Promise(requestAnimationFrame);
      const some = <T>(list: readonly T[], i: number): T => list[(i * 7919) % list.length] as T;
      const sheet = document.querySelector('.plan-canvas') as HTMLElement;
      const point = (type: string, x: number, y: number) =>
        sheet.dispatchEvent(
          new PointerEvent(type, { clientX: x, clientY: y, pointerId: 1, button: 0, buttons: 1, bubbles: true }),
        );
      // A synthetic press cannot be captured.
      sheet.setPointerCapture = () => undefined;
      const pull = async ([x, y]: readonly [number, number]) => {
        point('pointerdown', x, y);
        for (let step = 1; step <= 6; step++) {
          point('pointermove', x + step * 3, y + step * 2);
          await frame();
        }
        point('pointerup', x + 18, y + 12);
      };
      const kinds: readonly ((i: number) => unknown)[] = [
        (i) => state().select([some(level().walls, i).id]),
        () => state().nudge(25.4, 0),
        () => state().undo(),
        (i) => state().select([some(level().objects, i).id]),
        () =>
          window.dispatchEvent(new KeyboardEvent('keydown', { key: 'd', code: 'KeyD', ctrlKey: true, bubbles: true })),
        () => state().nudge(50.8, 25.4),
        () => state().deleteSelection(),
        () => state().addDetector(),
        () => state().deleteSelection(),
        (i) => state().updateItem(some(level().rooms, i).id, { name: `Room ${i}` }),
        (i) => state().updateItem(some(level().objects, i).id, { top: 500 + (i % 40) * 10 }),
        () => state().undo(),
        () => state().redo(),
        (i) => state().run((plan) => ({ ...plan, title: `Sheet ${i}` })),
        (i) => pull(hook.toScreen(...some(level().detectors, i).at)),
        () => state().undo(),
        (i) => {
          const { from: a, to: b } = some(level().walls, i);
          return pull(hook.toScreen(a[0] * 0.6 + b[0] * 0.4, a[1] * 0.6 + b[1] * 0.4));
        },
        () => state().undo(),
        (i) => state().setSitHeight(600 + (i % 20) * 25),
        (i) => state().zoomBy(i % 2 ? 1.25 : 0.8),
        () => state().fit(),
        (i) => state().setTheme((['sun', 'dark', 'paper'] as const)[i % 3] ?? 'paper'),
        (i) => state().setHover({ at: some(level().rooms, i).at, id: null }),
        () => state().setHover(null),
        (i) => state().setTool(i % 2 ? { kind: 'wall' } : { kind: 'select' }),
        () => state().setTool({ kind: 'select' }),
        () => state().select([]),
      ];
      for (let i = first; i < first + times; i++) {
        await kinds[i % kinds.length]?.(i);
        await frame();
      }
    },
    { first: from, times: count },
  );
}
