import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Level, XY } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { type Editor, editorOf } from './editor.ts';
import { type OpenPage, openPage, type PagePoint } from './harness.ts';
import { openStage } from './samples.ts';

/**
 * The cost of painting, counted. The page's clock is stopped and advanced frame by frame, so that no count depends on how
 * busy the machine is. The times are measured by `npm run bench -- --frames`.
 */

let open: OpenPage;
let page: Page;
let editor: Editor;
let level: Level;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  const read = parsePlan(readFileSync('samples/05-boarding-house.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the boarding house cannot be read');
  await page.clock.install();
  await page.clock.pauseAt(Date.now() + 60_000);
  await makeWorkExpensive();
  await page.evaluate((opened) => window.__stillspot?.store.getState().openPlan(opened), read.plan);
  await rest();
  level = await editor.level();
});

afterEach(async () => {
  await page.keyboard.press('Escape');
  await page.evaluate(() => window.__stillspot?.store.getState().select([]));
  await rest();
  open.expectNoTroubles();
});

/** Time from one frame to the next on the page's clock, ms. */
const PICTURE_MS = 16;
/** Longer than any delay after which the sheet starts work once the pointer rests, ms. */
const REST_MS = 400;
/** Greatest number of frames for which a move leaves work: then the sheet is at rest. */
const PICTURES_A_MOVE = 6;

const pictures = (count: number) => page.clock.runFor(PICTURE_MS * count);
const rest = () => page.clock.runFor(REST_MS);

/** Sets the duration of every piece of work by the clock that the page reads, ms: 0 on a fast machine, else more than the limit for cheap work. */
const setWorkMs = (ms: number) =>
  page.evaluate((each) => {
    (window as unknown as { workMs: number }).workMs = each;
  }, ms);

/** Makes every reading of the clock take time, so that all work is as expensive as on a slow machine, and always equally so. */
async function makeWorkExpensive(): Promise<void> {
  await page.evaluate(() => {
    const still = performance.now.bind(performance);
    const at = window as unknown as { workMs: number };
    let spent = 0;
    performance.now = () => {
      spent += at.workMs ?? 0;
      return still() + spent;
    };
  });
}

const counts = () => page.evaluate(() => window.__stillspot?.paintCounts() ?? { paints: {}, areas: {}, placements: 0 });

interface Cost {
  /** How many times the layer was painted, and the average fraction of the whole picture painted each time. */
  readonly of: (layer: string) => { readonly times: number; readonly share: number };
  /** How many times a painted canvas was moved without painting. */
  readonly placed: number;
}

/** Returns the cost of painting while `act` runs. */
async function paintsOf(act: () => Promise<void>): Promise<Cost> {
  const before = await counts();
  await act();
  const after = await counts();
  const whole = await page.evaluate(() => {
    const ground = document.querySelector<HTMLCanvasElement>('[data-layer="ground"]');
    return (ground?.width ?? 0) * (ground?.height ?? 0);
  });
  const of = (layer: string) => {
    const times = (after.paints[layer] ?? 0) - (before.paints[layer] ?? 0);
    const area = (after.areas[layer] ?? 0) - (before.areas[layer] ?? 0);
    return { times, share: times === 0 ? 0 : area / times / whole };
  };
  return { of, placed: after.placements - before.placements };
}

/** Number of edge pixels of curves that may be rounded differently where a strip's seam cuts them. The smallest word on the sheet has hundreds. */
const AT_SEAMS = 40;

/** Moves the mouse by steps with the button held; after each step, lets the sheet draw until no work is left. */
async function moves(from: PagePoint, steps: readonly XY[]): Promise<void> {
  for (const [dx, dy] of steps) {
    await page.mouse.move(from.x + dx, from.y + dy);
    await pictures(PICTURES_A_MOVE);
  }
}

/** Returns the cost of each move separately. */
async function costs(from: PagePoint, steps: readonly XY[]): Promise<readonly Cost[]> {
  const each: Cost[] = [];
  for (const step of steps) each.push(await paintsOf(() => moves(from, [step])));
  return each;
}

/** Starts counting how many times the page beside the sheet changes. */
async function countPanelChanges(): Promise<void> {
  await page.evaluate(() => {
    const at = window as unknown as { panelChanges: number };
    at.panelChanges = 0;
    const isBeside = ({ target }: MutationRecord) => !(target instanceof Element && target.closest('.plan-canvas'));
    const watch = { subtree: true, childList: true, attributes: true, characterData: true };
    // Called once for all changes of one update.
    const watcher = new MutationObserver((changes) => {
      if (changes.some(isBeside)) at.panelChanges++;
    });
    watcher.observe(document.body, watch);
  });
}
const panelChanges = () => page.evaluate(() => (window as unknown as { panelChanges: number }).panelChanges);

const line = (count: number, [dx, dy]: XY): readonly XY[] =>
  Array.from({ length: count }, (_, i): XY => [dx * (i + 1), dy * (i + 1)]);

/** Returns a point of a wall without openings, on the page. */
async function wallHold(): Promise<PagePoint> {
  const plain = level.walls.filter(({ id }) => !level.openings.some(({ wall }) => wall === id));
  const wall = plain[Math.floor(plain.length / 2)];
  if (!wall) throw new Error('no wall without openings');
  await page.evaluate((id) => window.__stillspot?.store.getState().select([id]), wall.id);
  await rest();
  return editor.at([wall.from[0] * 0.6 + wall.to[0] * 0.4, wall.from[1] * 0.6 + wall.to[1] * 0.4]);
}

/** Stores the visible ground picture for `differingPixels`. */
async function keepPicture(): Promise<void> {
  await page.evaluate(() => {
    const sheet = document.querySelector('.plan-canvas');
    const ground = document.querySelector<HTMLCanvasElement>('[data-layer="ground"]');
    if (!sheet || !ground) throw new Error('the page has no sheet');
    const [outer, inner] = [sheet.getBoundingClientRect(), ground.getBoundingClientRect()];
    const context = new OffscreenCanvas(Math.floor(outer.width), Math.floor(outer.height)).getContext('2d');
    if (!context) throw new Error('This browser draws no canvas.');
    context.drawImage(ground, inner.left - outer.left, inner.top - outer.top);
    const { width, height } = context.canvas;
    const keeper = window as unknown as { pictures?: ImageData[] };
    keeper.pictures = [...(keeper.pictures ?? []), context.getImageData(0, 0, width, height)];
  });
}

/** Paints everything again and returns how many pixels differ from the stored picture. */
async function differingPixels(): Promise<number> {
  await page.evaluate(() => window.__stillspot?.store.getState().setTheme('sun'));
  await rest();
  await page.evaluate(() => window.__stillspot?.store.getState().setTheme('paper'));
  await rest();
  await keepPicture();
  return page.evaluate(() => {
    const pictures = (window as unknown as { pictures: ImageData[] }).pictures;
    const [kept, fresh] = pictures.splice(0);
    if (!kept || !fresh) throw new Error('two pictures are compared');
    let differing = 0;
    for (let i = 0; i < fresh.data.length; i += 4) {
      const far = (channel: number) => Math.abs((kept.data[i + channel] ?? 0) - (fresh.data[i + channel] ?? 0));
      if (Math.max(far(0), far(1), far(2)) > 24) differing++;
    }
    return differing;
  });
}

describe('the sheet, painted', () => {
  it('has two canvases', async () => {
    await expect.poll(() => page.locator('.plan-canvas canvas').count()).toBe(2);
  });

  it.each([
    { machine: 'quick', workMs: 0 },
    { machine: 'slow', workMs: 2 },
  ])(
    'under a dragged detector on a $machine machine paints the overlay once a move, and nothing of the ground',
    async ({ workMs }) => {
      const [one] = level.detectors;
      if (!one) throw new Error('no detector');
      await setWorkMs(workMs);
      const at = await editor.at(one.at);
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      await moves(at, line(3, [4, 2]));
      await rest();
      for (const { of } of await costs({ x: at.x + 12, y: at.y + 6 }, line(10, [5, 3]))) {
        expect(of('detectors').times).toBe(1);
        for (const layer of ['sheet', 'zones', 'walls', 'names']) expect(of(layer).times, layer).toBe(0);
      }
      await page.keyboard.press('Escape');
      await page.mouse.up();
    },
  );

  it.each([
    { machine: 'quick', workMs: 0, times: 1 },
    // Shading and verdicts alternate there: one moves with the wall, the other follows one frame later.
    { machine: 'slow', workMs: 2, times: 2 },
  ])(
    'under a dragged wall on a $machine machine paints at most a fifth of the ground, $times × a move',
    async ({ workMs, times }) => {
      await setWorkMs(workMs);
      const at = await wallHold();
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      await moves(at, line(3, [0, 2]));
      for (const { of } of await costs({ x: at.x, y: at.y + 6 }, line(8, [0, 2]))) {
        expect(of('walls').times).toBe(times);
        // No detector is dragged and no verdict changes: the layers above the ground stay unchanged.
        expect(of('detectors').times).toBe(0);
        for (const layer of ['sheet', 'zones', 'walls', 'names']) expect(of(layer).share, layer).toBeLessThan(0.2);
      }
      await page.keyboard.press('Escape');
      await page.mouse.up();
    },
  );

  it('under a dragged detector changes the panels less often than the sheet', async () => {
    const [one] = level.detectors;
    if (!one) throw new Error('no detector');
    await setWorkMs(0);
    await openStage(page, 'Place');
    await page.evaluate((id) => window.__stillspot?.store.getState().select([id]), one.id);
    await rest();
    await expect.poll(() => page.getByRole('heading', { name: 'How high?' }).count()).toBe(1);
    const at = await editor.at(one.at);
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await moves(at, line(3, [4, 2]));
    await rest();
    await countPanelChanges();
    for (let step = 1; step <= 12; step++) {
      await page.mouse.move(at.x + 12 + step / 2, at.y + 6);
      await pictures(1);
    }
    // 12 frames take less than 0.2 s: the panels follow at most ten times a second.
    const changes = await panelChanges();
    expect(changes).toBeGreaterThan(0);
    expect(changes).toBeLessThanOrEqual(3);
    await page.keyboard.press('Escape');
    await page.mouse.up();
  });

  it('under a pointer that moves over floor with the same heights leaves the panels as they are', async () => {
    const [one] = level.detectors;
    if (!one) throw new Error('no detector');
    await openStage(page, 'Place');
    await rest();
    const at = await editor.at(one.at);
    await page.mouse.move(at.x, at.y);
    await rest();
    await expect.poll(() => page.locator('.heights__pointer strong').count()).toBeGreaterThan(0);
    await countPanelChanges();
    for (let step = 1; step <= 12; step++) {
      await page.mouse.move(at.x + step / 8, at.y);
      await pictures(1);
    }
    expect(await panelChanges()).toBeLessThanOrEqual(2);
  });

  it('after a wall was dragged and put down shows what a fresh painting shows', async () => {
    const at = await wallHold();
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await moves(at, line(12, [0.5, 1]));
    await page.mouse.up();
    await rest();
    await keepPicture();
    expect(await differingPixels()).toBe(0);
    await page.evaluate(() => window.__stillspot?.store.getState().undo());
    await rest();
    await keepPicture();
    expect(await differingPixels()).toBe(0);
  });

  it('moved by a little is placed elsewhere by the browser, not painted', async () => {
    const from = { x: 700, y: 450 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down({ button: 'middle' });
    await moves(from, [[1, 1]]);
    const { of, placed } = await paintsOf(() => moves(from, line(8, [4, 3])));
    expect(placed).toBeGreaterThanOrEqual(8);
    for (const layer of ['sheet', 'zones', 'walls', 'names']) expect(of(layer).times, layer).toBe(0);
    await page.mouse.up({ button: 'middle' });
  });

  it('moved far paints strips, and then shows what a fresh painting shows', async () => {
    await page.evaluate(() => window.__stillspot?.store.getState().zoomBy(2.5));
    await rest();
    const from = { x: 700, y: 450 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down({ button: 'middle' });
    const { of } = await paintsOf(() => moves(from, [...line(14, [23, -9]), ...line(6, [-31, 17])]));
    expect(of('zones').times).toBeGreaterThan(0);
    expect(of('zones').share).toBeLessThan(0.5);
    await page.mouse.up({ button: 'middle' });
    await rest();
    await keepPicture();
    expect(await differingPixels()).toBeLessThan(AT_SEAMS);
    await page.evaluate(() => window.__stillspot?.store.getState().fit());
  });
});
