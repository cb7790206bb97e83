import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../geometry/plan/model.ts';
import type { LogEntry } from '../../geometry/plan/test-record.ts';
import { someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, download, type OpenPage, type PageOptions } from './harness.ts';
import { openPair, openStage, stageButton } from './samples.ts';
import { tabTo } from './tab-to.ts';

const plan = async (page: Page): Promise<Plan> => {
  const found = await page.evaluate(() => window.__stillspot?.store.getState().plan);
  if (!found) throw new Error('the page has no plan');
  return found;
};
const log = async (page: Page): Promise<readonly LogEntry[]> => (await plan(page)).log ?? [];
const each = async <K extends keyof LogEntry>(page: Page, key: K) => (await log(page)).map((entry) => entry[key]);
/** Returns the message over the sheet; a screen reader gets the same text. */
const message = (page: Page) => page.locator('.message > p:first-child').textContent();
const steps = (page: Page) => page.evaluate(() => window.__stillspot?.store.temporal.getState().pastStates.length ?? 0);
const now = (page: Page) => page.locator('.log__now');
const focused = (target: Locator) => target.evaluate((element) => element === document.activeElement);
const serial = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Serial numbers' }).getByLabel(name, { exact: true });
/** Returns the section of one detector. */
const detector = (page: Page, name: string) =>
  page.locator('.log > details').filter({ has: page.locator('summary', { hasText: new RegExp(`^${name} `) }) });
const type = async (field: Locator, text: string) => {
  await field.fill(text);
  await field.press('Enter');
};

/** Records the detectors as placed and picked up, with nothing in the log. */
const fresh = (page: Page) =>
  page.evaluate(() => {
    const times = { start: '2026-03-07T18:00:00-05:00', end: '2026-03-10T09:00:00-04:00', posted: null };
    window.__stillspot?.store
      .getState()
      .run((before) => ({ ...before, visit: { ...before.visit, ...times }, log: [], weather: [] }));
  });

/** Opens the house with two detectors. */
async function opened(options: PageOptions = {}): Promise<OpenPage> {
  const open = await openPair(options);
  const { page } = open;
  await fresh(page);
  await openStage(page, 'Log');
  await page.getByRole('heading', { name: 'Log of the detectors' }).waitFor();
  return open;
}

/**
 * Picks photos for A1 like those of a phone, 12 megapixels each: light and shadow, things with edges, grain. They are made in the page
 * itself, which is fast. `others` are picked before them.
 */
const pick = (page: Page, count: number, others: readonly { name: string; text: string }[] = []) =>
  page.evaluate(
    async ({ count: many, others: first }) => {
      const [width, height] = [4000, 3000];
      const canvas = new OffscreenCanvas(width, height);
      const ctx = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
      const light = ctx.createLinearGradient(0, 0, width, height);
      light.addColorStop(0, '#e8dcc8');
      light.addColorStop(1, '#4a4438');
      ctx.fillStyle = light;
      ctx.fillRect(0, 0, width, height);
      for (let i = 0; i < 400; i++) {
        ctx.fillStyle = `hsl(${(i * 47) % 360} 30% ${20 + ((i * 13) % 60)}%)`;
        ctx.fillRect((i * 733) % width, (i * 577) % height, 40 + ((i * 31) % 300), 30 + ((i * 17) % 260));
      }
      const grain = new OffscreenCanvas(500, 500);
      const fine = grain.getContext('2d') as OffscreenCanvasRenderingContext2D;
      const pixels = fine.createImageData(500, 500);
      let seed = 7;
      for (let at = 0; at < pixels.data.length; at += 4) {
        seed = (seed * 1103515245 + 12345) % 2147483648;
        pixels.data.fill(seed >> 23, at, at + 3);
        pixels.data[at + 3] = 40;
      }
      fine.putImageData(pixels, 0, 0);
      for (let x = 0; x < width; x += 500) for (let y = 0; y < height; y += 500) ctx.drawImage(grain, x, y);
      const photo = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
      const data = new DataTransfer();
      for (const { name, text } of first) data.items.add(new File([text], name));
      for (let i = 1; i <= many; i++) data.items.add(new File([photo], `p${i}.jpg`, { type: 'image/jpeg' }));
      const input = document.querySelector<HTMLInputElement>('input[aria-label="Photos of A1"]');
      if (!input) throw new Error('no field for photos');
      input.files = data.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
      return photo.size;
    },
    { count, others },
  );

describe('the log', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await opened();
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('by keyboard only: from the serial numbers through the box to a photo', async () => {
    await stageButton(page, 'Log').focus();
    await tabTo(page, serial(page, 'A1'));
    await page.keyboard.type('C-1\nC-2\n');
    await tabTo(page, page.getByLabel('All placed by'));
    await page.keyboard.type('Ann Mill');
    await tabTo(page, page.getByLabel('All picked up by'));
    await page.keyboard.type('Ann Mill');
    await tabTo(page, page.getByRole('button', { name: /no evidence of tampering$/ }));
    await page.keyboard.press('Enter');
    await tabTo(page, page.locator('summary', { hasText: 'Transfer the whole box' }));
    await page.keyboard.press('Enter');
    const box = page.getByRole('group', { name: 'All 2 at once' });
    await tabTo(page, box.getByLabel('To', { exact: true }));
    await page.keyboard.type('Cy Dale');
    await tabTo(page, box.getByRole('button', { name: 'Record it' }));
    await page.keyboard.press('Enter');
    await now(page).getByText('A1 and A2: with Cy Dale.').waitFor();
    await expect.poll(() => each(page, 'serial')).toEqual(['C-1', 'C-2']);
    await expect.poll(() => each(page, 'placedBy')).toEqual(['Ann Mill', 'Ann Mill']);
    await tabTo(page, detector(page, 'A1').locator('summary').first());
    await page.keyboard.press('Enter');
    await tabTo(page, detector(page, 'A1').getByRole('button', { name: 'Add photos' }));
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Enter')]);
    expect(chooser.isMultiple()).toBe(true);
    await fresh(page);
    // An open section stays open while another stage is shown.
    await openStage(page, 'House');
    await openStage(page, 'Log');
    await expect.poll(() => detector(page, 'A1').getAttribute('open')).toBe('');
    await page.locator('.log details').evaluateAll((all) => {
      for (const fold of all) (fold as HTMLDetailsElement).open = false;
    });
  });

  it('a scanner goes from one serial number to the next; one that stands twice is remarked and waits for the right one', async () => {
    await serial(page, 'A1').click();
    await page.keyboard.type('C-1001\n');
    await expect.poll(() => focused(serial(page, 'A2'))).toBe(true);
    await page.keyboard.type('c-1001\n');
    await page.getByText('A1 has the same serial number. Check the labels again.').first().waitFor();
    await expect.poll(() => message(page)).toContain('A1 has the same serial number');
    await expect.poll(() => focused(serial(page, 'A2'))).toBe(true);
    await page.keyboard.type('C-1002\n');
    await expect.poll(() => each(page, 'serial')).toEqual(['C-1001', 'C-1002']);
    await expect.poll(() => page.getByText('the same serial number').count()).toBe(0);
  });

  it('what is the same for all is written once and taken back in one step', async () => {
    const before = await steps(page);
    await type(page.getByLabel('All placed by'), 'Ann Mill');
    await expect.poll(() => each(page, 'placedBy')).toEqual(['Ann Mill', 'Ann Mill']);
    await expect.poll(() => steps(page)).toBe(before + 1);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => each(page, 'placedBy')).toEqual(['', '']);
    await page.getByRole('button', { name: 'Redo' }).click();
    await type(page.getByLabel('All picked up by'), 'Ann Mill');
    await page.getByRole('button', { name: /sealed at the pick-up, 9:00 am$/ }).click();
    await page.getByRole('button', { name: /no evidence of tampering$/ }).click();
    await expect.poll(() => each(page, 'tampering')).toEqual(['none', 'none']);
    await expect.poll(() => each(page, 'sealed')).toEqual(Array(2).fill('2026-03-10T09:00:00-04:00'));
    await now(page).getByText('A1 and A2: with Ann Mill, since Tuesday, March 10, 9:00 am.').waitFor();
  });

  it('names that differ are shown before they are written over', async () => {
    await detector(page, 'A2').locator('summary').first().click();
    await type(detector(page, 'A2').getByLabel('Picked up by'), 'Bo Reed');
    await page.getByText('Not the same: A1 Ann Mill and A2 Bo Reed.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => each(page, 'fetchedBy')).toEqual(['Ann Mill', 'Ann Mill']);
  });

  it('the box is transferred in one step; who has it stands at the top; mail and laboratory are the times of the visit', async () => {
    await page.locator('summary', { hasText: 'Transfer the whole box' }).click();
    const box = page.getByRole('group', { name: 'All 2 at once' });
    await expect.poll(() => box.getByLabel('From', { exact: true }).inputValue()).toBe('Ann Mill');
    await box.getByLabel('To', { exact: true }).fill('Cy Dale');
    await type(box.getByLabel('Transferred', { exact: true }), '2026-03-10T10:00');
    const before = await steps(page);
    await box.getByRole('button', { name: 'Record it' }).click();
    await now(page).getByText('A1 and A2: with Cy Dale, since Tuesday, March 10, 10:00 am.').waitFor();
    await expect
      .poll(async () => [await steps(page), (await each(page, 'custody')).map(({ length }) => length)])
      .toEqual([before + 1, [1, 1]]);
    await type(page.getByLabel('Mailed', { exact: true }), '2026-03-10T11:00');
    await now(page).getByText('A1 and A2: with the mail, since Tuesday, March 10, 11:00 am.').waitFor();
    await expect.poll(async () => (await plan(page)).visit.posted).toBe('2026-03-10T11:00:00-04:00');
    const lines = detector(page, 'A2').getByRole('list', { name: 'A2, chain of custody' }).locator('strong');
    const chain = ['Placed by Ann Mill', 'Picked up by Ann Mill', 'Sealed', 'Ann Mill to Cy Dale', 'Mailed'];
    await expect.poll(() => lines.allTextContents()).toEqual(chain);
    await detector(page, 'A2').getByRole('button', { name: 'Remove for all 2: Ann Mill to Cy Dale' }).click();
    await expect.poll(async () => (await each(page, 'custody')).flat()).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => lines.count()).toBe(chain.length);
    await expect.poll(() => page.locator('.log__doubt').count()).toBe(0);
  });

  it('a transfer before the pick-up is recorded and remarked; it is removed and comes back', async () => {
    const one = detector(page, 'A2');
    await one.locator('summary', { hasText: 'Transfer it' }).click();
    await one.getByLabel('From', { exact: true }).fill('the house');
    await one.getByLabel('To', { exact: true }).fill('Bo Reed');
    await type(one.getByLabel('Transferred', { exact: true }), '2026-03-10T08:59');
    await one.getByRole('button', { name: 'Record it' }).click();
    await one.getByText('Before the pick-up, Tuesday, March 10, 9:00 am. Review both times.').waitFor();
    await now(page).getByText('A2: times or transfers do not fit together. See the log of each.').waitFor();
    await expect.poll(() => message(page)).toMatch(/^Recorded\. Review: Before the pick-up/);
    await one.getByRole('button', { name: 'Remove: the house to Bo Reed' }).click();
    await expect.poll(() => page.locator('.log__doubt').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await one.getByText('Before the pick-up').waitFor();
    await page.keyboard.press('Control+y');
  });

  it('a press on what moves because a field was left is not lost', async () => {
    await detector(page, 'A2').getByLabel('Picked up by').fill('Bo Reed');
    const box = page.locator('summary', { hasText: 'Transfer the whole box' });
    const open = () => box.evaluate((summary) => (summary.parentElement as HTMLDetailsElement).open);
    expect(await open()).toBe(true);
    await box.click();
    await expect.poll(open).toBe(false);
    await page.getByText('Not the same: A1 Ann Mill and A2 Bo Reed.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
  });

  it('tampering that was seen says beside the field what it comes to', async () => {
    await detector(page, 'A2').getByLabel('Evidence of tampering').selectOption('seen');
    await detector(page, 'A2')
      .getByText(/The log has evidence of tampering at A2\. This test is invalid/)
      .waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => each(page, 'tampering')).toEqual(['none', 'none']);
  });

  it('the weather is noted by day and time, removed, and comes back', async () => {
    await page.locator('summary', { hasText: 'Weather' }).click();
    await page.getByText('Outdoor temperatures, lowest and highest').waitFor();
    await page.getByLabel('What it was like').fill('Rain, 41 to 50 °F, calm');
    await type(page.getByLabel('When', { exact: true }), '2026-03-08T07:30');
    await page.getByRole('button', { name: 'Note the weather' }).click();
    const take = page.getByRole('button', { name: 'Remove: Rain, 41 to 50 °F, calm, Sunday, March 8, 7:30 am' });
    await take.click();
    await expect.poll(async () => (await plan(page)).weather ?? []).toEqual([]);
    await page.keyboard.press('Control+z');
    await take.waitFor();
    await expect
      .poll(async () => (await plan(page)).weather)
      .toEqual([{ at: '2026-03-08T07:30:00-04:00', text: 'Rain, 41 to 50 °F, calm' }]);
  });

  it.each(someOf(['sun', 'dark'], 1))('axe finds nothing in the colors %s', async (theme) => {
    await page.getByLabel('Colors').selectOption(theme);
    expect(await accessibilityFindings(page)).toEqual([]);
    open.expectNoTroubles();
  });

  it('photos are made small, named, removed and brought back; the file of ten stays small', async () => {
    await fresh(page);
    await detector(page, 'A1').locator('summary').first().click();
    const before = await steps(page);
    await pick(page, 10);
    await page.getByText(/^10 photos in the log, \d\.\d MB of the plan\.$/).waitFor();
    await expect.poll(() => steps(page)).toBe(before + 1);
    const last = page.getByRole('img', { name: 'A1 where it lay, 10 of 10' });
    await expect
      .poll(() =>
        last.evaluate((image) => [image as HTMLImageElement].map(({ naturalWidth: w, naturalHeight: h }) => [w, h])),
      )
      .toEqual([[1280, 960]]);
    await page.getByRole('button', { name: 'Remove photo 10 of A1' }).click();
    await expect.poll(async () => (await log(page))[0]?.photos.length).toBe(9);
    await page.keyboard.press('Control+z');
    await last.waitFor();
    const saved = await download(page, () => page.getByRole('button', { name: 'Save', exact: true }).click());
    expect(saved.bytes.length).toBeLessThan(5_000_000);
    expect(saved.bytes.length).toBeGreaterThan(200_000);
  });

  it('photos that are none are refused in words, the others are taken in', async () => {
    await pick(page, 1, [{ name: 'label.pdf', text: '%PDF-1.7 not a picture' }]);
    await page.getByText(/^1 photo in the log, .* label\.pdf is a PDF\. Save the page as a picture/).waitFor();
    await expect.poll(async () => (await log(page))[0]?.photos.length).toBe(11);
    await page.getByLabel('Colors').selectOption('paper');
    expect(await accessibilityFindings(page)).toEqual([]);
    open.expectNoTroubles();
  });

  it('photos of which the file could not be opened again are refused, with the way out', async () => {
    await page.evaluate(() => {
      const image = `data:image/jpeg;base64,${'A'.repeat(17_999_000)}`;
      window.__stillspot?.store.getState().run((before) => {
        const [entry, ...others] = before.log ?? [];
        return entry ? { ...before, log: [{ ...entry, photos: [image] }, ...others] } : before;
      });
    });
    await pick(page, 1);
    const refused =
      /^The pictures of this plan take 18\.0 MB already, and a plan file may have 20 MB\. Remove some first\.$/;
    await page.getByText(refused).waitFor();
    await expect.poll(async () => (await log(page))[0]?.photos.length).toBe(1);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await log(page))[0]?.photos.length).toBe(11);
  });

  it('photos stay on the sheet where the storage is full, and can be saved as a file', async () => {
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await pick(page, 1);
    await page.getByText(/could not save: The storage of this browser is full/).waitFor();
    await expect.poll(async () => (await log(page))[0]?.photos.length).toBe(12);
    const saved = await download(page, () => page.getByRole('button', { name: 'Save as a file' }).click());
    expect((JSON.parse(saved.bytes.toString()) as Plan).log?.[0]?.photos.length).toBe(12);
  });
});

describe('on a tablet, by finger only', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await opened({ touch: true, viewport: { width: 1024, height: 768 } });
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('the box is picked up, sealed and mailed; nothing sticks out of the column, all is as large as a fingertip', async () => {
    await page.getByLabel('All picked up by').tap();
    await page.keyboard.insertText('Ann Mill'); // like an on-screen keyboard
    await page.getByRole('button', { name: 'All sealed: now' }).tap();
    await page.getByRole('button', { name: /no evidence of tampering$/ }).tap();
    await page.getByRole('button', { name: 'Mailed: now' }).tap();
    await now(page)
      .getByText(/A1 and A2: with the mail, since /)
      .waitFor();
    await expect.poll(async () => (await each(page, 'sealed')).every(Boolean)).toBe(true);
    await detector(page, 'A1').locator('summary').first().tap();
    await detector(page, 'A1').locator('summary', { hasText: 'Transfer it' }).tap();
    await detector(page, 'A1').getByLabel('To', { exact: true }).fill('A'.repeat(80));
    await detector(page, 'A1').getByRole('button', { name: 'Record it' }).tap();
    await page.getByRole('button', { name: /^Remove: .*A{80}$/ }).waitFor();
    const found = await page.evaluate(() => {
      const column = document.querySelector('#stage-log')?.getBoundingClientRect();
      const boxes = (which: string) => [...document.querySelectorAll(which)].map((one) => one.getBoundingClientRect());
      const pressed = boxes('.log button, .log summary, .log input:not(.unseen), .log select').filter(
        (box) => box.width > 0,
      );
      return {
        out: boxes('.log *').filter(({ right, width }) => width > 1 && right > (column?.right ?? 0) + 0.5).length,
        small: pressed.filter(({ height }) => height < 44).length,
        many: pressed.length > 20,
      };
    });
    expect(found).toEqual({ out: 0, small: 0, many: true });
    open.expectNoTroubles();
  });

  it('a tap on what moves because a field was left is not lost', async () => {
    await fresh(page);
    await detector(page, 'A1').getByLabel('Picked up by').tap();
    await page.keyboard.insertText('Bo Reed');
    const box = page.locator('summary', { hasText: 'Transfer the whole box' });
    await box.tap();
    await expect.poll(() => box.evaluate((summary) => (summary.parentElement as HTMLDetailsElement).open)).toBe(true);
    await expect.poll(() => each(page, 'fetchedBy')).toEqual(['Bo Reed']);
  });
});
