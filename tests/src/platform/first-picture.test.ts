import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { awaitFirstPicture, firstPicture, firstPictureDrawn } from '../../../src/platform/first-picture.ts';

/** Page events and frames, run by hand. */
let page: EventTarget;
let frames: (() => void)[];

beforeEach(() => {
  vi.useFakeTimers();
  page = new EventTarget();
  frames = [];
  vi.stubGlobal('addEventListener', page.addEventListener.bind(page));
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => frames.push(work));
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** Whether the wait is over, after everything that is due now. */
async function isOver(): Promise<boolean> {
  let over = false;
  void firstPicture().then(() => (over = true));
  await vi.advanceTimersByTimeAsync(0);
  return over;
}

it('nothing is awaited where the wait was not started', async () => {
  expect(await isOver()).toBe(true);
});

it('is over in the frame after the sheet was first drawn, however often it is drawn', async () => {
  awaitFirstPicture();
  expect(await isOver()).toBe(false);
  firstPictureDrawn();
  firstPictureDrawn();
  expect(await isOver()).toBe(false);
  expect(frames).toHaveLength(1);
  frames[0]?.();
  expect(await isOver()).toBe(true);
});

it.each(['pointerdown', 'keydown'])(
  'is over with the first %s: what a press needs is loaded at once',
  async (event) => {
    awaitFirstPicture();
    page.dispatchEvent(new Event(event));
    expect(await isOver()).toBe(true);
  },
);

it('is over after a while for a sheet that is never drawn', async () => {
  awaitFirstPicture();
  await vi.advanceTimersByTimeAsync(2900);
  expect(await isOver()).toBe(false);
  await vi.advanceTimersByTimeAsync(200);
  expect(await isOver()).toBe(true);
});
