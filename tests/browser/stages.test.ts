import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { howMany, someOf } from '../helpers/how-many.ts';
import { editorOf } from './editor.ts';
import { FURNACE, selectIds } from './hands.ts';
import { accessibilityFindings, announcerReady, type OpenPage, openPage, partsThere, settled } from './harness.ts';
import { openPair, openStage, stageButton } from './samples.ts';

const STAGES = ['Property', 'Draw', 'Place', 'Time', 'House', 'Log', 'Results', 'Plan sheet'] as const;
const PAGES = ['Time', 'House', 'Log', 'Results', 'Plan sheet'] as const;

/** A desktop of 1440 by 900 at 200 %, one of 1280 by 1024 at 400 %, and phones in both orientations, CSS px. */
const SMALL = [
  [320, 256],
  [360, 740],
  [390, 844],
  [320, 640],
  [844, 390],
  [720, 450],
] as const;

const openVisit = (page: Page) => page.getByRole('button', { name: 'Visit', exact: true }).click();

/** Returns how far content extends beyond the window or its scroll container, sideways, px. */
const sideways = (page: Page) =>
  page.evaluate(() => {
    const panes = [...document.querySelectorAll('.stage-page, .job, .side__scroll, .sheet')].filter((pane) =>
      pane.checkVisibility({ visibilityProperty: true }),
    );
    const over = panes.map((pane) => pane.scrollWidth - pane.clientWidth);
    return Math.max(document.documentElement.scrollWidth - window.innerWidth, ...over);
  });

/** Returns the parts of the two top bars that extend beyond the window, or over a neighbor. */
const crowded = (page: Page) =>
  page.evaluate(() =>
    ['.top', '.test-line'].flatMap((bar) => {
      const parts = [...(document.querySelector(bar)?.querySelectorAll('button, summary, input, strong') ?? [])]
        .filter((each) => each.checkVisibility() && each.getBoundingClientRect().width > 1)
        .map((each) => ({ text: each.textContent, box: each.getBoundingClientRect() }))
        .sort((a, b) => a.box.left - b.box.left);
      return parts
        .filter(({ box }, index) => box.right > (parts[index + 1]?.box.left ?? window.innerWidth) + 0.5)
        .map(({ text }) => text);
    }),
  );

/** Returns the accent buttons that something else covers after scrolling to them. */
const covered = (page: Page) =>
  page.evaluate(() => {
    const shown = [...document.querySelectorAll('.button--main')].filter((each) =>
      each.checkVisibility({ visibilityProperty: true }),
    );
    return shown
      .filter((each) => {
        each.scrollIntoView({ block: 'nearest' });
        const { left, top, width, height } = each.getBoundingClientRect();
        const above = document.elementFromPoint(left + width / 2, top + height / 2);
        return above === null || !each.contains(above);
      })
      .map((each) => each.textContent);
  });

describe.each(someOf(SMALL, 1))('on a page of %d by %d', (width, height) => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPair({ viewport: { width, height }, touch: true });
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('no stage scrolls sideways, nothing covers its main button, and the bar fits a thumb', async () => {
    for (const stage of [...STAGES, 'Visit']) {
      if (stage === 'Visit') await openVisit(page);
      else await openStage(page, stage);
      await partsThere(page);
      await settled(page);
      expect(await sideways(page), stage).toBeLessThanOrEqual(0);
      expect(await covered(page), stage).toEqual([]);
      expect(await crowded(page), stage).toEqual([]);
    }
    for (const stage of STAGES) {
      const box = await stageButton(page, stage).boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0), stage).toBeGreaterThanOrEqual(44);
    }
    const names = page.locator('.stage-bar__name');
    const heights = await names.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
    expect(new Set(heights).size, 'each name on one line').toBe(1);
    open.expectNoTroubles();
  });

  it('the plan has the screen while something is placed, with the verdict in one line', async () => {
    await openStage(page, 'Place');
    const rail = page.getByRole('button', { name: 'Place panel' });
    if ((await rail.count()) > 0) await rail.tap();
    await page.locator('.answers').getByRole('button', { name: 'Detector' }).first().tap();
    await rail.waitFor();
    await page.getByRole('button', { name: /^Clear of what is drawn/ }).waitFor();
    const { sheet, strip } = await page.evaluate(() => {
      const size = (which: string) => document.querySelector(which)?.getBoundingClientRect();
      const side = size('.side--folded');
      return { sheet: size('.sheet')?.width, strip: Math.min(side?.width ?? 0, side?.height ?? 0) };
    });
    expect(sheet).toBeGreaterThanOrEqual(width > 640 ? width - 100 : width);
    expect(strip).toBeLessThanOrEqual(64);
    await page.getByRole('button', { name: 'Put the tool back' }).tap();
  });
});

describe.each(someOf([1181, 1280, 1366, 1440], 1))('at a desk %d px wide', (width) => {
  it('the bars at the top hold all that they show, of a new plan and of a whole test', async () => {
    const fresh = await openPage({ viewport: { width, height: 900 } });
    const pair = await openPair({ viewport: { width, height: 900 } });
    for (const { page } of [fresh, pair]) {
      await page.getByRole('button', { name: 'Visit', exact: true }).waitFor();
      await settled(page);
      expect(await sideways(page)).toBeLessThanOrEqual(0);
      expect(await crowded(page)).toEqual([]);
      const line = page.locator('.test-line');
      const before = (await line.boundingBox())?.height;
      await line.locator('strong').evaluate((each) => {
        each.textContent = 'Valid, and calls for another test'; // the longest
      });
      expect(await crowded(page)).toEqual([]);
      expect((await line.boundingBox())?.height).toBe(before);
    }
    for (const { context } of [fresh, pair]) await context.close();
  });
});

describe('a page for each stage', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPair();
    page = open.page;
  });
  afterAll(() => open.context.close());

  /** Returns how far a press moves the pressed control, px; 0 for one that it removes. */
  async function shift(target: Locator): Promise<number> {
    await target.scrollIntoViewIfNeeded();
    const before = await target.boundingBox();
    await target.click();
    await settled(page);
    if ((await target.count()) === 0) return 0;
    const after = await target.boundingBox();
    // A page scrolls by whole pixels, but the height of a line of text is not a whole number of them.
    return Math.round(Math.hypot((after?.y ?? 0) - (before?.y ?? 0), (after?.x ?? 0) - (before?.x ?? 0)));
  }

  it('has the whole width, a heading that stays, and the plan one press away, as it was', async () => {
    const viewport = () => page.evaluate(() => window.__stillspot?.store.getState().viewport);
    const before = await viewport();
    for (const stage of PAGES) {
      await openStage(page, stage);
      const heading = page.getByRole('heading', { level: 2, name: stage, exact: true });
      const pane = page.getByRole('main');
      expect((await pane.boundingBox())?.width, stage).toBe(1440);
      await pane.evaluate((each) => each.scrollTo(0, each.scrollHeight));
      const [at, top] = [await heading.boundingBox(), await pane.boundingBox()];
      expect((at?.y ?? 0) - (top?.y ?? 0), stage).toBeLessThan(40);
      expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
      expect(await page.locator('[aria-current="page"]').count()).toBe(1);
    }
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await expect.poll(() => stageButton(page, 'Place').getAttribute('aria-current')).toBe('page');
    expect(await viewport()).toEqual(before);
  });

  it('nothing that is pressed moves', async () => {
    await openStage(page, 'House');
    for (const answer of someOf(await page.locator('.condition__answers .button').all(), 8))
      expect(await shift(answer)).toBe(0);
    for (const name of (await page.locator('.condition__name').all()).slice(0, howMany(2, 6)))
      expect(await shift(name)).toBe(0);
    await openStage(page, 'Time');
    for (const name of ['Closed-building conditions since', 'Placed', 'Picked up', 'Mailed'])
      expect(await shift(page.getByRole('button', { name: `${name}: now` })), name).toBe(0);
    for (const fold of await page.locator('#stage-time summary').all()) expect(await shift(fold)).toBe(0);
    await openStage(page, 'Log');
    for (const fold of await page.locator('#stage-log summary').all()) expect(await shift(fold)).toBe(0);
    for (const stage of STAGES) expect(await shift(stageButton(page, stage)), stage).toBe(0);
  });

  it('the focus never falls to the page: from a page to the plan, and from one page to another', async () => {
    const focused = () => page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent);
    await openStage(page, 'Log');
    await page.locator('#stage-log').getByRole('button', { name: 'Review the times' }).press('Enter');
    await expect.poll(focused).toBe('Time');
    await page.getByRole('button', { name: 'Plan', exact: true }).press('Enter');
    await expect.poll(focused).toBe('sheet-of-plan');
  });

  it('what is typed and not taken stays while another stage is looked at', async () => {
    await openStage(page, 'Time');
    const field = page.locator('#stage-time').getByLabel('At least', { exact: true });
    if (!(await field.isVisible())) await page.locator('summary', { hasText: 'The kit' }).click();
    await field.fill('two days');
    await openStage(page, 'Draw');
    await openStage(page, 'House');
    await openStage(page, 'Time');
    await expect.poll(() => field.inputValue()).toBe('two days');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await field.press('Escape');
  });

  it('no key changes the plan that is not in view; undo works on every page', async () => {
    const editor = await editorOf(page);
    await openStage(page, 'Place');
    await selectIds(editor, [FURNACE]);
    await openStage(page, 'Plan sheet');
    const before = await editor.level();
    await page.keyboard.press('Delete');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('3');
    await page.keyboard.press('1');
    expect(await editor.level()).toEqual(before);
    expect(await page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('select');
    await openStage(page, 'House');
    await page.locator('.condition__answers .button').first().click();
    const steps = await editor.steps();
    await page.keyboard.press('Control+z');
    await expect.poll(() => editor.steps()).toBe(steps - 1);
  });

  it('what is undone where it is not in view is told in the line of messages; in view it is not', async () => {
    await announcerReady(page);
    const said = () => page.locator('.message > p:first-child').filter({ visible: true }).first().textContent();
    await openStage(page, 'Time');
    const field = page.locator('#stage-time').getByLabel('Closed-building conditions since', { exact: true });
    await field.fill('2026-03-05T07:00');
    await field.press('Enter');
    await openStage(page, 'Draw');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(said).toBe('Undone: a change of the times of the visit.');
    await page.keyboard.press('Control+y');
    await expect.poll(said).toBe('Done again: a change of the times of the visit.');
    await openStage(page, 'Time');
    await expect.poll(() => field.inputValue()).toBe('2026-03-05T07:00');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => field.inputValue()).not.toBe('2026-03-05T07:00');
    await expect.poll(async () => (await said()) ?? '').not.toContain('Undone');
  });

  it('a good place is not shown larger than a test that is not evaluated', async () => {
    await openStage(page, 'House');
    await page
      .getByRole('group', { name: 'Windows closed on every level' })
      .getByRole('button', { name: 'Not met', exact: true })
      .click();
    await openStage(page, 'Place');
    await page.locator('.test-line__head', { hasText: 'Invalid, do not use' }).waitFor();
    const word = page.locator('.verdict-panel__word');
    await expect.poll(() => word.textContent()).toBe('Clear of what is drawn');
    expect(await word.evaluate((each) => Number.parseFloat(getComputedStyle(each).fontSize))).toBeLessThan(20);
    await page.getByText('This is the placement alone: the test is invalid.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
  });

  it('the state of the whole test is the same on every page, in words, and its list leads on', async () => {
    const state = page.getByRole('region', { name: 'The whole test' });
    const words = await state.locator('.test-line__head').textContent();
    for (const stage of STAGES) {
      await openStage(page, stage);
      expect(await state.locator('.test-line__head').textContent()).toBe(words);
    }
    await state.locator('summary').click();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.to-do').getAttribute('open')).toBeNull();
    open.expectNoTroubles();
  });

  it('comes back when its tab is loaded again; another tab starts with the plan', async () => {
    const { page: tab, context } = await openPair();
    const current = (where: Page) => where.locator('.stage-bar [aria-current="page"]').textContent();
    await openVisit(tab);
    await tab.reload();
    await tab.getByRole('heading', { level: 2, name: 'Visit' }).waitFor();
    await openStage(tab, 'Time');
    await tab.reload();
    await tab.getByRole('heading', { level: 2, name: 'Time', exact: true }).waitFor();
    const other = await context.newPage();
    await other.goto(tab.url());
    await other.getByLabel('Title of the plan').waitFor();
    expect(await current(other)).toContain('Draw');
    expect(await current(tab)).toContain('Time');
    await context.close();
  });
});
