import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { code128, labelVideo } from '../helpers/code-128.ts';
import { findBrowser, TEST_ARGS } from '../run/find-browser.mjs';
import { accessibilityFindings } from './harness.ts';
import { openSample, openStage, saved } from './samples.ts';

const SERIAL = 'C-40817';
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-camera-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Starts a browser whose camera shows the label, with a phone in it, on the page Visit. */
async function withCamera(text: string, permissions: readonly string[] = ['camera']) {
  const video = join(folder, `${text || 'none'}.y4m`);
  writeFileSync(video, labelVideo(text));
  const camera = ['--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${video}`];
  const browser = await chromium.launch({ executablePath: findBrowser(), args: [...TEST_ARGS, ...camera] });
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await context.grantPermissions([...permissions]);
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && troubles.push(message.text()));
  await page.addInitScript(watchStreams);
  await page.goto(inject('siteUrl'));
  await openSample(page, 'Plain basement');
  await saved(page);
  await page.getByRole('button', { name: 'Visit', exact: true }).tap();
  await page.getByRole('heading', { level: 2, name: 'Visit' }).waitFor();
  return { browser, page, troubles };
}

/** Runs in the page: records every camera stream that was given, to check that it is stopped. */
function watchStreams(): void {
  const streams: MediaStream[] = [];
  Object.assign(window, { streams });
  const { mediaDevices } = navigator;
  const given = mediaDevices.getUserMedia.bind(mediaDevices);
  mediaDevices.getUserMedia = async (wanted) => {
    const stream = await given(wanted);
    streams.push(stream);
    return stream;
  };
}
const running = (page: Page) =>
  page.evaluate(() => {
    const { streams } = window as unknown as { streams: MediaStream[] };
    return streams.flatMap((each) => each.getTracks().map(({ readyState }) => readyState));
  });

const field = (page: Page, name = 'A1') => page.getByLabel(name, { exact: true });
const said = (page: Page) => page.locator('.stage-page .message > p:first-child').textContent();
const scanner = (page: Page) => page.getByRole('dialog', { name: 'Serial number of A1' });
const words = (page: Page) => scanner(page).getByRole('status').textContent();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).tap();
const openScanner = (page: Page) => press(page, 'Camera: serial number of A1');

describe('the serial number of a label, by the camera', () => {
  let browser: Browser;
  let page: Page;
  let troubles: string[];
  beforeAll(async () => {
    ({ browser, page, troubles } = await withCamera(SERIAL));
  });
  afterAll(() => browser.close());

  it('is read by itself into the field, told, undone, and the camera stops', async () => {
    await openScanner(page);
    await expect.poll(() => field(page).inputValue()).toBe(SERIAL);
    await expect.poll(() => said(page)).toBe(`A1: ${SERIAL}. Undo reverts it.`);
    expect(await scanner(page).count()).toBe(0);
    expect(await running(page)).toEqual(['ended']);
    await press(page, 'Undo');
    await expect.poll(() => field(page).inputValue()).toBe('');
  });

  it('the number before it is shown, and one that another detector has is told', async () => {
    await field(page).fill('typed by hand');
    await field(page).press('Enter');
    await openScanner(page);
    await expect.poll(() => said(page)).toBe(`A1: ${SERIAL} in place of typed by hand. Undo reverts it.`);
    await openScanner(page);
    await expect.poll(() => said(page)).toBe(`A1: ${SERIAL}, as it is recorded.`);
    await press(page, 'Camera: serial number of A2');
    await expect.poll(() => said(page)).toMatch(new RegExp(`^A2: ${SERIAL}\\. .*A1`));
    await openStage(page, 'Log');
    await expect.poll(() => page.locator('#stage-log').getByLabel('A2', { exact: true }).inputValue()).toBe(SERIAL);
    expect(new Set(await running(page))).toEqual(new Set(['ended']));
    expect(troubles).toEqual([]);
  });
});

describe('a camera that reads nothing', () => {
  let browser: Browser;
  let page: Page;
  let troubles: string[];
  beforeAll(async () => {
    ({ browser, page, troubles } = await withCamera(''));
  });
  afterAll(() => browser.close());

  it('says how to hold the label, has targets for a finger, and axe finds nothing', async () => {
    await openScanner(page);
    await expect.poll(() => words(page)).toMatch(/^Hold the label flat/);
    await expect.poll(() => words(page)).toMatch(/^No bar code is read yet\. Go nearer/);
    expect(await running(page)).toEqual(['live']);
    const heights = await scanner(page)
      .locator('button')
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('stops when it is closed, by its button and by Escape, and the focus is back on its button', async () => {
    await scanner(page).getByRole('button', { name: 'Close' }).tap();
    await expect.poll(() => running(page)).toEqual(['ended']);
    await openScanner(page);
    await expect.poll(() => words(page)).toMatch(/^Hold the label flat/);
    await page.keyboard.press('Escape');
    await expect.poll(() => running(page)).toEqual(['ended', 'ended']);
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await expect.poll(focused).toBe('Camera: serial number of A1');
    expect(await field(page).inputValue()).toBe('');
  });

  it('leaves to the field by one press, where the number is typed', async () => {
    await openScanner(page);
    await scanner(page).getByRole('button', { name: 'Type the number' }).tap();
    await page.keyboard.type('C-1001');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page).inputValue()).toBe('C-1001');
    expect(await running(page)).toEqual(['ended', 'ended', 'ended']);
  });

  it('takes a picture instead, whichever way it is held, and says when there is no code in it', async () => {
    await openScanner(page);
    const take = async (text: string, isTurned = false) => {
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        scanner(page).getByRole('button', { name: 'Take a picture' }).tap(),
      ]);
      const buffer = await labelPicture(page, text, isTurned);
      await chooser.setFiles({ name: 'label.png', mimeType: 'image/png', buffer });
    };
    await take('');
    await expect.poll(() => words(page)).toMatch(/^No bar code was found in the picture\./);
    await take('C-2002', true);
    await expect.poll(() => said(page)).toBe('A1: C-2002 in place of C-1001. Undo reverts it.');
    expect(new Set(await running(page))).toEqual(new Set(['ended']));
  });

  it('has its light where it has one, and says when it is unplugged', async () => {
    await page.evaluate(() => {
      const lights: unknown[] = [];
      Object.assign(window, { lights });
      const track = MediaStreamTrack.prototype;
      track.getCapabilities = () => ({ torch: true }) as MediaTrackCapabilities;
      track.applyConstraints = async (wanted) => void lights.push(JSON.stringify(wanted));
    });
    await openScanner(page);
    const light = scanner(page).getByRole('button', { name: 'Light' });
    await light.tap();
    await light.tap();
    const lights = () => page.evaluate(() => (window as unknown as { lights: string[] }).lights);
    expect(await lights()).toEqual(['{"advanced":[{"torch":true}]}', '{"advanced":[{"torch":false}]}']);
    await page.evaluate(() => {
      const { streams } = window as unknown as { streams: MediaStream[] };
      streams.at(-1)?.getVideoTracks()[0]?.dispatchEvent(new Event('ended'));
    });
    await expect.poll(() => words(page)).toMatch(/^The camera was unplugged or switched off\./);
    expect(troubles).toEqual([]);
  });
});

describe('where the camera is refused', () => {
  it('it is said how to allow it, and the number is typed or taken from a picture', async () => {
    const { browser, page, troubles } = await withCamera(SERIAL, []);
    await openScanner(page);
    await expect.poll(() => words(page)).toMatch(/^The browser did not allow the camera\..* or type the number\.$/);
    expect(await scanner(page).locator('video').isVisible()).toBe(false);
    expect(await accessibilityFindings(page)).toEqual([]);
    await scanner(page).getByRole('button', { name: 'Type the number' }).tap();
    await page.keyboard.type('C-3003');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page).inputValue()).toBe('C-3003');
    expect(troubles).toEqual([]);
    await browser.close();
  });
});

/** Returns a picture file with the label on it; without a label if the text is empty. */
async function labelPicture(page: Page, text: string, isTurned: boolean): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([bars, turned]) => {
      const canvas = turned ? new OffscreenCanvas(600, 800) : new OffscreenCanvas(800, 600);
      const context = canvas.getContext('2d');
      if (!context) throw new Error('This browser draws no canvas.');
      context.fillStyle = 'white';
      context.fillRect(0, 0, 800, 800);
      if (turned) context.setTransform(0, 1, -1, 0, 600, 0);
      context.fillStyle = 'black';
      for (const [index, isBar] of bars.entries()) if (isBar) context.fillRect(150 + index * 4, 200, 4, 200);
      const bytes = new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer());
      return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
    },
    [text ? code128(text) : [], isTurned] as const,
  );
  return Buffer.from(base64, 'base64');
}
