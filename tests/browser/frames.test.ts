import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { parsePlan } from '../../geometry/index.ts';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { type OpenPage, openPage, type PagePoint } from './harness.ts';

/** What painting has cost, counted: no clock. The times are measured by `npm run bench -- --frames`. */

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
  await openAnew(read.plan);
  level = await editor.level();
});

afterEach(async () => {
  await page.keyboard.press('Escape');
  await page.evaluate(() => window.__stillspot?.store.getState().select([]));
  open.expectNoTroubles();
});

async function openAnew(plan: Plan): Promise<void> {
  await page.evaluate((opened) => window.__stillspot?.store.getState().openPlan(opened), plan);
  await page.waitForTimeout(400);
}

const tally = () => page.evaluate(() => window.__stillspot?.tally() ?? { paints: {}, areas: {}, laid: 0 });

/** How often each layer was painted, and how much of a whole picture each time on average, while `act` ran. */
async function paintsOf(act: () => Promise<void>) {
  const before = await tally();
  await act();
  const after = await tally();
  const whole = await page.evaluate(() => {
    const ground = document.querySelector<HTMLCanvasElement>('[data-surface="ground"]');
    return (ground?.width ?? 0) * (ground?.height ?? 0);
  });
  const of = (layer: string) => {
    const times = (after.paints[layer] ?? 0) - (before.paints[layer] ?? 0);
    const area = (after.areas[layer] ?? 0) - (before.areas[layer] ?? 0);
    return { times, share: times === 0 ? 0 : area / times / whole };
  };
  return { of, laid: after.laid - before.laid };
}

/** Edge pixels of curves that a strip's seam cuts may be rounded otherwise. The smallest word on the sheet has hundreds. */
const AT_SEAMS = 40;

/** Moves the held mouse by steps, each in a frame of its own. */
async function moves(from: PagePoint, steps: readonly XY[]): Promise<void> {
  for (const [dx, dy] of steps) {
    await page.mouse.move(from.x + dx, from.y + dy);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  }
}

const line = (count: number, [dx, dy]: XY): readonly XY[] =>
  Array.from({ length: count }, (_, i): XY => [dx * (i + 1), dy * (i + 1)]);

/** A point of a wall without openings, on the page. */
async function wallHold(): Promise<PagePoint> {
  const plain = level.walls.filter(({ id }) => !level.openings.some(({ wall }) => wall === id));
  const wall = plain[Math.floor(plain.length / 2)];
  if (!wall) throw new Error('no wall without openings');
  await page.evaluate((id) => window.__stillspot?.store.getState().select([id]), wall.id);
  return editor.at([wall.from[0] * 0.6 + wall.to[0] * 0.4, wall.from[1] * 0.6 + wall.to[1] * 0.4]);
}

/** Keeps what is seen of the ground for `differingPixels`. */
async function keepPicture(): Promise<void> {
  await page.evaluate(() => {
    const sheet = document.querySelector('.plan-canvas');
    const ground = document.querySelector<HTMLCanvasElement>('[data-surface="ground"]');
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

/** Paints everything anew and answers how many pixels of the kept picture were others. */
async function differingPixels(): Promise<number> {
  await page.evaluate(() => window.__stillspot?.store.getState().setTheme('sun'));
  await page.waitForTimeout(100);
  await page.evaluate(() => window.__stillspot?.store.getState().setTheme('paper'));
  await page.waitForTimeout(300);
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

  it('under a dragged detector paints the hand’s layer once a move, and nothing of the ground', async () => {
    const [one] = level.detectors;
    if (!one) throw new Error('no detector');
    const at = await editor.at(one.at);
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await moves(at, line(3, [4, 2]));
    await page.waitForTimeout(300);
    const { of } = await paintsOf(() => moves({ x: at.x + 12, y: at.y + 6 }, line(10, [5, 3])));
    expect(of('top').times).toBeGreaterThanOrEqual(10);
    expect(of('top').times).toBeLessThanOrEqual(12);
    for (const layer of ['sheet', 'zones', 'walls', 'names']) expect(of(layer).times, layer).toBe(0);
    await page.keyboard.press('Escape');
    await page.mouse.up();
  });

  it('under a dragged wall paints at most a fifth of the ground, twice a move at most, and nothing over it', async () => {
    const at = await wallHold();
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await moves(at, line(3, [0, 2]));
    const { of } = await paintsOf(() => moves({ x: at.x, y: at.y + 6 }, line(8, [0, 2])));
    expect(of('walls').times).toBeGreaterThanOrEqual(4);
    expect(of('walls').times).toBeLessThanOrEqual(16);
    // No detector is pulled and no verdict turns: what lies over the ground stays as it is.
    expect(of('top').times).toBeLessThanOrEqual(2);
    for (const layer of ['sheet', 'zones', 'walls', 'names']) expect(of(layer).share, layer).toBeLessThan(0.2);
    await page.keyboard.press('Escape');
    await page.mouse.up();
  });

  it('after a wall was dragged and put down shows what a fresh painting shows', async () => {
    const at = await wallHold();
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await moves(at, line(12, [0.5, 1]));
    await page.mouse.up();
    await page.waitForTimeout(300);
    await keepPicture();
    expect(await differingPixels()).toBe(0);
    await page.evaluate(() => window.__stillspot?.store.getState().undo());
    await page.waitForTimeout(300);
    await keepPicture();
    expect(await differingPixels()).toBe(0);
  });

  it('moved by a little is laid elsewhere, not painted', async () => {
    const from = { x: 700, y: 450 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down({ button: 'middle' });
    await moves(from, [[1, 1]]);
    const { of, laid } = await paintsOf(() => moves(from, line(8, [4, 3])));
    expect(laid).toBeGreaterThanOrEqual(8);
    for (const layer of ['sheet', 'zones', 'walls', 'names']) expect(of(layer).times, layer).toBe(0);
    await page.mouse.up({ button: 'middle' });
  });

  it('moved far paints strips, and then shows what a fresh painting shows', async () => {
    await page.evaluate(() => window.__stillspot?.store.getState().zoomBy(2.5));
    await page.waitForTimeout(400);
    const from = { x: 700, y: 450 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down({ button: 'middle' });
    const { of } = await paintsOf(() => moves(from, [...line(14, [23, -9]), ...line(6, [-31, 17])]));
    expect(of('zones').times).toBeGreaterThan(0);
    expect(of('zones').share).toBeLessThan(0.5);
    await page.mouse.up({ button: 'middle' });
    await page.waitForTimeout(400);
    await keepPicture();
    expect(await differingPixels()).toBeLessThan(AT_SEAMS);
    await page.evaluate(() => window.__stillspot?.store.getState().fit());
  });
});
