import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writePlan } from '../../geometry/planfile/write.ts';
import { someOf } from '../helpers/how-many.ts';
import { days, independently, invented, onePlace } from '../helpers/invented-pairs.ts';
import { accessibilityFindings, download, type OpenPage, openPage } from './harness.ts';
import { openStage, stageButton } from './samples.ts';

const pairs = invented();
const expected = independently(pairs);
const SHOTS = process.env.STILLSPOT_SHOTS;

/** Stores plans in the library, in the format in which the app stores them. */
async function shelve(page: Page): Promise<void> {
  const plans = pairs.map((values, i) => {
    const plan = onePlace(values, days(i), `Invented house ${i + 1}`);
    return { id: `house-${i + 1}`, title: plan.title, end: plan.visit.end, text: writePlan(plan) };
  });
  await page.evaluate(async (all) => {
    const db = await new Promise<IDBDatabase>((done) => {
      const request = indexedDB.open('stillspot-shelf');
      request.onsuccess = () => done(request.result);
    });
    const change = db.transaction(['cards', 'texts'], 'readwrite');
    const told = { roomNames: [], detectorLabels: [], levels: 1, start: null, versionAt: 0, readable: true };
    all.forEach(({ id, title, end, text }, i) => {
      const view = { levelId: '', selection: [], viewport: null };
      change.objectStore('texts').put({ id, text: { pieces: [text], long: [] }, savedAt: 1, tab: 'test', view });
      const card = { id, title, place: '', createdAt: 1, changedAt: 1, hash: id, end, ...told };
      // The first one is also stored as a deleted plan: deleted plans do not count.
      change.objectStore('cards').put({ ...card, binnedAt: null });
      if (i > 0) return;
      change.objectStore('texts').put({ id: 'bin', text: { pieces: [text], long: [] }, savedAt: 1, tab: 'test', view });
      change.objectStore('cards').put({ ...card, id: 'bin', hash: 'bin', binnedAt: 1 });
    });
    await new Promise((done) => {
      change.oncomplete = done;
    });
    db.close();
  }, plans);
}

async function openBook(page: Page): Promise<void> {
  await openStage(page, 'Results');
  await page.getByRole('button', { name: 'Quality book' }).click();
  await page.getByRole('status').getByText('200 other plans').waitFor();
}

const HEADS = [
  'Means of 4.0 pCi/L and more, charcoal-barrier',
  'Means of 2.0 to 3.9 pCi/L, charcoal-barrier',
  'Means below 2.0 pCi/L, charcoal-barrier',
] as const;

/** Returns the words of the tables that are broken over two lines; a date too may not be. Runs in the page. */
function wordsBroken(): readonly string[] {
  const broken: string[] = [];
  for (const cell of document.querySelectorAll('.book__table :is(th, td)')) {
    const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      for (const word of (node.textContent ?? '').matchAll(/[a-z]+|\d{4}-\d{2}/gi)) {
        const range = document.createRange();
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (lines.size > 1) broken.push(word[0]);
      }
    }
  }
  return broken;
}

describe('the quality book over 200 invented pairs', () => {
  let opened: OpenPage;
  let page: Page;
  const chart = (i: number) => page.getByRole('region', { name: HEADS[i] as string, exact: true });
  beforeAll(async () => {
    opened = await openPage();
    page = opened.page;
    await page.waitForFunction(() => (window.__stillspot?.store.getState().stageSize.width ?? 0) > 0);
    await shelve(page);
    await openBook(page);
  });
  afterAll(() => opened.context.close());

  it.each([0, 1, 2])('chart %d marks what an independent calculation flags, in the order of the dates', async (i) => {
    const marks = chart(i).locator('.drawn [data-point]');
    await expect
      .poll(() => marks.evaluateAll((all) => all.map((each) => each.getAttribute('data-point'))))
      .toEqual(expected[i]);
    // Two consecutive points beyond the warning limit end a run.
    const bad = (at: number) => expected[i]?.[at] !== undefined && expected[i]?.[at] !== 'in-control';
    const runs = (expected[i] ?? []).flatMap((_, at) => (bad(at) && bad(at - 1) ? [at] : []));
    await expect
      .poll(() => marks.evaluateAll((all) => all.flatMap((each, at) => (each.hasAttribute('data-run') ? [at] : []))))
      .toEqual(runs);
  });

  it('has every pair in a table beside the picture, and the lines with their values', async () => {
    await chart(0).getByText('The pairs as a table', { exact: true }).click();
    await expect.poll(() => chart(0).locator('tbody tr').count()).toBe(expected[0]?.length);
    const text = await chart(1).textContent();
    expect(text).toMatch(/Warning from [\d.]+%, control from [\d.]+%/);
    await expect.poll(() => chart(2).textContent()).toContain('Warning above 1 pCi/L');
  });

  it('shows what is completed and outstanding by month, and the spikes of the year', async () => {
    const january = page.getByRole('row', { name: /^2026-01/ });
    await expect.poll(() => january.textContent()).toContain('20 completed, 2 required');
    await expect.poll(() => january.textContent()).toContain('0 of 1 completed, 1 outstanding');
    await page
      .getByRole('row', { name: /^Year 2026/ })
      .getByText('0 of 3 completed, 3 outstanding')
      .waitFor();
    await expect.poll(() => page.locator('.book').textContent()).toContain('at most 6 a month, and at least 3 a year');
  });

  it('goes out as tables and drawings', async () => {
    const table = await download(page, () =>
      chart(0)
        .getByRole('button', { name: /^Save the pairs/ })
        .click(),
    );
    expect(table.bytes.toString().trim().split('\r\n')).toHaveLength(1 + (expected[0]?.length ?? 0));
    const drawing = await download(page, () =>
      chart(0)
        .getByRole('button', { name: /^Save the chart/ })
        .click(),
    );
    const svg = drawing.bytes.toString();
    expect(svg.match(/data-point/g)).toHaveLength(expected[0]?.length ?? 0);
    for (const word of ['Control ', 'Warning ', 'certified or licensed', 'font-face']) expect(svg).toContain(word);
    expect(svg).not.toContain('var(');
    if (SHOTS) writeFileSync(`${SHOTS}/chart.svg`, svg);
    const months = await download(page, () => page.getByRole('button', { name: /^Save the months/ }).click());
    expect(months.bytes.toString()).toContain('2026-10');
  });

  it.each(someOf(['sun', 'dark', 'paper'], 1))(
    'is clean for axe in the colors %s, in the last with everything open',
    async (theme) => {
      await page.evaluate((name) => window.__stillspot?.store.getState().setTheme(name as 'paper'), theme);
      await page.locator(`html[data-theme="${theme}"]`).waitFor();
      // The hundreds of rows are alike: one is enough.
      const some = theme === 'paper' ? '.book details:not([open])' : '.book details[open]';
      await page.locator(`${some} > summary`).evaluateAll((all) => {
        for (const each of all) (each as HTMLElement).click();
      });
      expect(await accessibilityFindings(page)).toEqual([]);
    },
  );

  it.each([
    [1440, 900],
    [1024, 768],
    [390, 844],
  ])('fits a page of %d by %d', async (width, height) => {
    await page.evaluate(() => window.__stillspot?.store.getState().setTheme('paper'));
    await page.setViewportSize({ width, height });
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth))
      .toBeLessThanOrEqual(0);
    const body = page.locator('.book__body');
    await expect
      .poll(() => page.locator('.book').evaluate((each) => each.scrollHeight - each.clientHeight))
      .toBeLessThanOrEqual(0);
    await expect.poll(() => body.evaluate((each) => each.scrollWidth - each.clientWidth)).toBeLessThanOrEqual(0);
    await expect.poll(() => page.evaluate(wordsBroken)).toEqual([]);
    // What is outstanding is seen without scrolling sideways.
    const outstanding = page.getByRole('row', { name: /^Year 2026/ }).getByText('3 outstanding');
    await expect.poll(async () => (await outstanding.boundingBox())?.x ?? width).toBeGreaterThan(0);
    await expect
      .poll(async () => {
        const box = await outstanding.boundingBox();
        return box === null ? width + 1 : box.x + box.width;
      })
      .toBeLessThanOrEqual(width);
    // Type of a chart is 3.4 mm: read without a glass, 10 px at least.
    const type = () =>
      chart(0)
        .locator('.drawn')
        .first()
        .evaluate((svg) => 3.4 * ((svg as SVGSVGElement).getScreenCTM()?.a ?? 0));
    await expect.poll(type).toBeGreaterThanOrEqual(10);
    if (!SHOTS) return;
    await page.locator('.book details[open] > summary').evaluateAll((all) => {
      for (const each of all) (each as HTMLElement).click();
    });
    const parts = ['Completed, required, outstanding', ...HEADS, 'Blanks and spikes'];
    for (const [i, name] of parts.entries()) {
      await page.getByRole('region', { name, exact: true }).evaluate((each) => each.scrollIntoView({ block: 'start' }));
      await page.screenshot({ path: `${SHOTS}/quality-${width}-${i}.png` });
    }
  });
});

describe('blanks and spikes by keyboard', () => {
  it('are recorded, evaluated, changed and removed; Escape closes the book', async () => {
    const { page, expectNoTroubles, context } = await openPage({ viewport: { width: 1024, height: 768 } });
    await stageButton(page, 'Results').press('Enter');
    await page.getByRole('button', { name: 'Quality book' }).press('Enter');
    await page.getByText('Nothing is measured yet').waitFor();
    const quality = () => page.evaluate(() => window.__stillspot?.store.getState().plan.quality);
    await page.getByText('Record a blank or spike').press('Enter');
    const form = page.locator('.book details.group');
    const enter = async (label: string, text: string) => {
      await form.getByLabel(label, { exact: true }).fill(text);
      await page.keyboard.press('Enter');
    };
    const write = form.getByRole('button', { name: 'Record it' });
    await expect.poll(() => write.isDisabled()).toBe(true); // a blank without a result does not count as zero
    await form.getByLabel('Kind').selectOption('spike');
    await enter('Serial', 'S-7');
    await enter('Exposed to, pCi/L', '10');
    await enter('Result, pCi/L', '13.5');
    await write.press('Enter');
    await page.getByRole('status').getByText('Spike S-7 is recorded.').waitFor();
    const table = page.getByRole('region', { name: 'Blanks and spikes, all plans' });
    await table.getByText('out of control').waitFor();
    await table.getByText('35.0% off').waitFor();
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/quality-checks.png` });
    const own = page.getByRole('group', { name: 'Spike S-7' });
    await own.getByLabel('Result, pCi/L').fill('12');
    await page.keyboard.press('Enter');
    await table.getByText('met').waitFor();
    expect(await quality()).toMatchObject([{ id: 'q1', kind: 'spike', value: 12, reference: 10, serial: 'S-7' }]);
    await own.getByRole('button', { name: 'Remove spike S-7' }).press('Enter');
    await page.getByText('None is recorded yet.').waitFor();
    expect(await quality()).toEqual([]);
    await page.keyboard.press('Escape');
    await page.locator('.book').waitFor({ state: 'detached' }); // the browser reports the closing in a later task
    expectNoTroubles();
    await context.close();
  });
});
