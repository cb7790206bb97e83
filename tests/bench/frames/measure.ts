import type { CDPSession, Page } from 'playwright-core';
import type { Plan, XY } from '../../../geometry/plan/model.ts';
import { type Gesture, handPath } from './gestures.ts';
import type { OpenSheet } from './stand.ts';
import { type TraceEvent, traced, workPerFrame } from './trace.ts';

/** One value for each frame, ms. */
export interface FrameFigures {
  /** Time from one frame to the next by the page's clock. */
  readonly intervals: readonly number[];
  /** Processor time of the page's main thread. */
  readonly work: readonly number[];
}

/** Time between reports of a mouse, which sends 125 per second. */
const STEP_MS = 8;
/** Points before the measurement begins, so that the drag has begun and the code is hot. */
const LEAD_IN = 40;

/** Does the gesture twice on one page: for the intervals, then with a trace of the browser for the work. */
export async function measureGesture(
  sheet: OpenSheet,
  plan: Plan,
  gesture: Gesture,
  ms: number,
): Promise<FrameFigures> {
  const start = await takeHold(sheet.page, plan, gesture);
  await sheet.cdp.send('Emulation.setCPUThrottlingRate', { rate: gesture.slowed });
  const intervals = await pull(sheet, gesture, start, ms, (run) => ticking(sheet.page, run));
  let events: readonly TraceEvent[] = [];
  await pull(sheet, gesture, start, ms, async (run) => {
    events = await traced(sheet.cdp, run);
    return [];
  });
  return { intervals, work: workPerFrame(events) };
}

/** Selects the things to move. Returns the point of the press, px of the page. */
async function takeHold(page: Page, plan: Plan, { hold, zoom }: Gesture): Promise<XY> {
  const [level] = plan.levels;
  if (!level) throw new Error('the plan has no level');
  const { select, at } = hold(level);
  const point = await page.evaluate(
    ({ ids, place, times }) => {
      const hook = window.__stillspot;
      const state = hook?.store.getState();
      if (!hook || !state) throw new Error('the page has no sheet');
      state.select(ids);
      if (times !== 1) state.zoomBy(times);
      const { left, top, width, height } =
        document.querySelector('.plan-canvas')?.getBoundingClientRect() ?? new DOMRect();
      return place ? hook.toScreen(...place) : ([left + width / 2, top + height / 2] as const);
    },
    { ids: [...select], place: at && ([...at] as [number, number]), times: zoom },
  );
  await page.waitForTimeout(1000);
  return point;
}

async function pull(
  { page, cdp }: OpenSheet,
  { button, reachPx }: Gesture,
  start: XY,
  ms: number,
  watch: (run: () => Promise<void>) => Promise<readonly number[]>,
): Promise<readonly number[]> {
  const path = handPath(start, reachPx, LEAD_IN + Math.round(ms / STEP_MS));
  await mouse(cdp, 'mouseMoved', start);
  await mouse(cdp, 'mousePressed', start, button);
  await follow(cdp, path.slice(0, LEAD_IN), button);
  const seen = await watch(() => follow(cdp, path.slice(LEAD_IN), button));
  // Cancels the drag, so that the next one begins with the same plan.
  await page.keyboard.press('Escape');
  await mouse(cdp, 'mouseReleased', path.at(-1) ?? start, button);
  if (button === 'middle') await follow(cdp, [start], button, true);
  await page.waitForTimeout(600);
  return seen;
}

/** Moves the mouse at the pace of a clock, regardless of how long the page takes. */
async function follow(cdp: CDPSession, path: readonly XY[], button: Gesture['button'], up = false): Promise<void> {
  const begin = performance.now();
  const sent: Promise<unknown>[] = [];
  for (const [i, point] of path.entries()) {
    sent.push(mouse(cdp, 'mouseMoved', point, up ? undefined : button));
    const wait = begin + (i + 1) * STEP_MS - performance.now();
    if (wait > 0) await new Promise((done) => setTimeout(done, wait));
  }
  await Promise.all(sent);
}

type MouseEvent = 'mouseMoved' | 'mousePressed' | 'mouseReleased';

async function mouse(cdp: CDPSession, type: MouseEvent, [x, y]: XY, button?: Gesture['button']): Promise<void> {
  const held = button && { button, buttons: button === 'left' ? 1 : 4, clickCount: type === 'mouseMoved' ? 0 : 1 };
  await cdp.send('Input.dispatchMouseEvent', { type, x, y, ...held });
}

/** Returns the times between the frames of the page during `run`, ms. */
export async function ticking(page: Page, run: () => Promise<void>): Promise<readonly number[]> {
  await page.evaluate(() => {
    const notes = { times: [] as number[], on: true };
    Object.assign(window, { frameNotes: notes });
    const tick = (now: number) => {
      notes.times.push(now);
      if (notes.on) requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  await run();
  const times = await page.evaluate(() => {
    const { frameNotes } = window as unknown as { frameNotes: { times: number[]; on: boolean } };
    frameNotes.on = false;
    return frameNotes.times;
  });
  return times.slice(1).map((time, i) => time - (times[i] ?? time));
}
