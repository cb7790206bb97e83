import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../helpers/pdf-reader.ts';
import { accessibilityFindings, download, type OpenPage, openPage } from './harness.ts';
import { openSample, openStage, saved } from './samples.ts';

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

const saveBy = (page: Page, name: string) => download(page, () => page.getByRole('button', { name }).click());

describe('the report in the browser', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPage();
    page = open.page;
    await openSample(page, 'Plain basement');
    await saved(page);
    await openStage(page, 'Plan sheet');
  });
  afterAll(() => open.context.close());

  it('counts what is missing, and less of it once it is typed', async () => {
    const summary = page.getByText(/^Required by published lists:/);
    const before = Number(/(\d+) missing/.exec((await summary.textContent()) ?? '')?.[1]);
    expect(before).toBeGreaterThan(5);
    await page.getByText(/^Building: /).click();
    await field(page, 'ZIP code').fill('60000');
    await field(page, 'County').fill('Reed');
    await field(page, 'County').press('Tab');
    await expect.poll(() => summary.textContent()).toContain(`${before - 2} missing`);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('is saved as a PDF with what was typed, and says first how the test stands', async () => {
    const { name, bytes } = await saveBy(page, 'Save the report (PDF)');
    expect(name).toBe('finch-lane-basement-report.pdf');
    const { pages, title } = await readPdf(new Uint8Array(bytes));
    expect(title).toBe('Finch Lane, basement');
    const text = pages.flatMap(({ texts }) => texts.map((each) => each.text)).join(' ');
    expect(text).toContain('60000');
    expect(text.indexOf('The test: unknown.')).toBeLessThan(text.indexOf('Values on record'));
  });

  it('has of the device what only it knows: lot, last day of use, the uncertainty of a result', async () => {
    await page.getByText(/^Device: /).click();
    await field(page, 'Lot').fill('LOT-7');
    await field(page, 'Use before').fill('2027-02-28');
    await field(page, 'Use before').press('Tab');
    await field(page, 'Mitigation system').selectOption('Seen, and not running');
    await field(page, 'What was seen of the system').fill('The fan is off');
    await field(page, 'What was seen of the system').press('Tab');
    await openStage(page, 'Results');
    await field(page, 'Result of A1').fill('3.9');
    await field(page, 'Result of A1').press('Tab');
    await field(page, 'Uncertainty of A1, as reported').fill('0.4');
    await field(page, 'Uncertainty of A1, as reported').press('Tab');
    expect(await accessibilityFindings(page)).toEqual([]);
    await openStage(page, 'Plan sheet');
    const { bytes } = await saveBy(page, 'Save the report (PDF)');
    const { pages } = await readPdf(new Uint8Array(bytes));
    const text = pages.flatMap(({ texts }) => texts.map((each) => each.text)).join(' ');
    for (const part of ['LOT-7', 'February 28, 2027', 'Seen, and NOT running. The fan is off', '3.9 pCi/L ± 0.4'])
      expect(text).toContain(part);
  });

  it('the sheets are saved as one PDF, and the results as a table', async () => {
    const sheets = await saveBy(page, 'Save the sheets (PDF)');
    expect((await readPdf(new Uint8Array(sheets.bytes))).pages.length).toBeGreaterThan(2);
    const table = await saveBy(page, 'Save the results as a table (CSV)');
    expect(new TextDecoder().decode(table.bytes)).toMatch(/^title,site,test/);
    const data = await saveBy(page, 'Save the report for other programs (JSON)');
    expect(data.name).toBe('finch-lane-basement-report.json');
    expect(JSON.parse(new TextDecoder().decode(data.bytes))).toMatchObject({
      title: 'Finch Lane, basement',
      test: 'unknown',
    });
  });

  it('is upright where that is chosen, and the sheets too, with who drew the plan', async () => {
    await page.getByText(/^Drawing of the plan: /).click();
    // A control character would break every page on paper: it is removed as when a file is read.
    await field(page, 'Drawn by').fill('<b>Ines\u0007</b> Cal\u001bloway');
    await field(page, 'Drawn by').press('Tab');
    await field(page, 'Orientation').selectOption('Portrait');
    await field(page, 'Orientation of the report').selectOption('Portrait');
    for (const name of ['Save the sheets (PDF)', 'Save the report (PDF)']) {
      const { pages } = await readPdf(new Uint8Array((await saveBy(page, name)).bytes));
      expect(pages.every(({ width, height }) => width < height)).toBe(true);
      const last = pages.at(name.includes('sheets') ? 0 : -1);
      expect(last?.texts.map(({ text }) => text).join(' ')).toContain('<b>Ines</b> Calloway');
    }
    await page.getByRole('button', { name: 'Preview the plan sheet' }).click();
    await page.getByText(/Letter, portrait\. At 100%/).waitFor();
    expect(
      await page.evaluate(() => document.adoptedStyleSheets.map((sheet) => sheet.cssRules[0]?.cssText).join()),
    ).toContain('215.9mm 279.4mm');
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
  });

  it('is shared by the sheet of the system where there is one, as the sheets and the notices are', async () => {
    await page.evaluate(() => {
      const shared: string[] = [];
      Object.assign(window, { shared });
      Object.assign(navigator, {
        canShare: () => true,
        share: async ({ title, files = [] }: ShareData) => {
          shared.push(`${title}: ${files.map(({ name, type }) => `${name} ${type}`)}`);
        },
      });
    });
    await openStage(page, 'House');
    const shared = () => page.evaluate(() => (window as unknown as { shared: string[] }).shared);
    await page.getByRole('button', { name: 'Share it' }).click();
    const wanted = ['Notice to occupants: finch-lane-basement-notice.pdf application/pdf'];
    await expect.poll(shared).toEqual(wanted);
    await openStage(page, 'Plan sheet');
    await page.getByRole('button', { name: 'Share the sheets' }).click();
    wanted.push('Plan sheet: finch-lane-basement.pdf application/pdf');
    await expect.poll(shared).toEqual(wanted);
    await page.getByRole('button', { name: 'Share the report' }).click();
    wanted.push('Report of the test: finch-lane-basement-report.pdf application/pdf');
    await expect.poll(shared).toEqual(wanted);
  });

  it('offers firm and laboratory of the last report for the next plan', async () => {
    await page.getByText(/^Firm and licenses: /).click();
    await field(page, 'Name of the firm').fill('Lindqvist Testing');
    await field(page, 'Name of the firm').press('Tab');
    await saved(page);
    await openSample(page, 'Split level');
    await openStage(page, 'Plan sheet');
    await page.getByRole('button', { name: 'Firm, laboratory and device as in the last report' }).click();
    await page.getByText('Lindqvist Testing').waitFor();
  });
});
