import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { accessibilityFindings, download, drag, imagePixel, openPage, pixelAt, pngSize, touchDrag } from './harness.ts';

/** A page that records the pointer: its kind, where it went down and up, and the number of moves between. */
const RECORDER = `<!doctype html><html lang="en"><title>Recorder</title>
<main style="touch-action: none; height: 3000px; background: rgb(0, 114, 178)"></main><script>
  window.way = [];
  for (const type of ['pointerdown', 'pointermove', 'pointerup'])
    document.addEventListener(type, (event) => {
      if (event.type !== 'pointermove' || event.buttons === 1)
        window.way.push({ type, pointer: event.pointerType, x: event.clientX, y: event.clientY });
    });
</script></html>`;

interface Step {
  readonly type: string;
  readonly pointer: string;
  readonly x: number;
  readonly y: number;
}

const from = { x: 100, y: 200 };
const to = { x: 180, y: 360 };

function expectWay(way: readonly Step[], pointer: string): void {
  expect(way[0]).toEqual({ type: 'pointerdown', pointer, ...from });
  expect(way.at(-1)).toEqual({ type: 'pointerup', pointer, ...to });
  expect(way.filter(({ type }) => type === 'pointermove').length).toBeGreaterThanOrEqual(4);
}

/** Goes to a page without a content security policy. */
const emptied = (page: Page) => page.goto(inject('emptyUrl'));

const wayOf = (window: Window) => (window as unknown as { way: Step[] }).way;

describe('what the browser tests drive a page with', () => {
  it('a mouse drag lands, moves in steps and lets go; a color is read from what is shown', async () => {
    const { page } = await openPage();
    await emptied(page);
    await page.setContent(RECORDER);
    await drag(page, from, to);
    expectWay(await page.evaluate(`(${wayOf})(window)`), 'mouse');
    expect(await pixelAt(page, { x: 50, y: 50 })).toEqual([0, 114, 178, 255]);
  });

  it('a touch drag does the same with a finger and does not scroll, on a screen of two pixels to one', async () => {
    const { page } = await openPage({ viewport: { width: 1024, height: 768 }, touch: true, deviceScaleFactor: 2 });
    await emptied(page);
    await page.setContent(RECORDER);
    await touchDrag(page, from, to);
    expectWay(await page.evaluate(`(${wayOf})(window)`), 'touch');
    expect(await page.evaluate('scrollY')).toBe(0);
    expect(pngSize(await page.screenshot())).toEqual({ width: 2048, height: 1536 });
  });

  it('a download comes with its name and bytes, and a picture in it can be read', async () => {
    const { page } = await openPage();
    await emptied(page);
    await page.setContent(`<button>Save</button><script>
      document.querySelector('button').onclick = () => {
        const canvas = Object.assign(document.createElement('canvas'), { width: 30, height: 20 });
        const context = canvas.getContext('2d');
        context.fillStyle = 'rgb(213, 94, 0)';
        context.fillRect(10, 0, 20, 20);
        canvas.toBlob((blob) =>
          Object.assign(document.createElement('a'), { href: URL.createObjectURL(blob), download: 'spot.png' }).click());
      };
    </script>`);
    const { name, bytes } = await download(page, () => page.click('button'));
    expect(name).toBe('spot.png');
    expect(pngSize(bytes)).toEqual({ width: 30, height: 20 });
    expect(await imagePixel(page, bytes, { x: 20, y: 10 })).toEqual([213, 94, 0, 255]);
    expect(await imagePixel(page, bytes, { x: 5, y: 10 })).toEqual([0, 0, 0, 0]);
  });

  it('an accessibility finding is found, and an error on the page fails the test', async () => {
    const opened = await openPage();
    await emptied(opened.page);
    await opened.page.setContent('<img src="data:,"><script>console.error("broken")</script>');
    const findings = await accessibilityFindings(opened.page);
    expect(findings.some((line) => line.startsWith('image-alt'))).toBe(true);
    expect(opened.troubles).toContain('broken');
    expect(() => opened.expectNoTroubles()).toThrow('broken');
  });
});
