import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Tracing } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';
import { type Editor, editorOf } from './editor.ts';
import {
  accessibilityFindings,
  download,
  drag,
  type OpenPage,
  openPage,
  pixelAt,
  settled,
  touchDrag,
} from './harness.ts';
import { openStage } from './samples.ts';

/** Returns a sketch drawn in the page itself: a dark square of 400 pixels on a sheet of 800 by 600, red in its middle. */
async function sketch(page: Page, type: string, width = 800, height = 600): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([kind, w, h]) => {
      const canvas = new OffscreenCanvas(w, h);
      const ctx = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
      ctx.fillStyle = 'white';
      ctx.fillRect(0, 0, w, h);
      ctx.fillStyle = 'red';
      ctx.fillRect(w / 4, h / 4, w / 2, h / 2);
      const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: kind })).arrayBuffer());
      return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
    },
    [type, width, height] as const,
  );
  return Buffer.from(base64, 'base64');
}

/** Returns the greatest excess of red over green of any pixel of a picture. */
const mostlyRed = (page: Page, png: Buffer): Promise<number> =>
  page.evaluate(async (base64) => {
    const raw = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([raw]), { resizeWidth: 200 });
    const ctx = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d') as OffscreenCanvasRenderingContext2D;
    ctx.drawImage(bitmap, 0, 0);
    const { data } = ctx.getImageData(0, 0, bitmap.width, bitmap.height);
    let most = 0;
    for (let at = 0; at < data.length; at += 4) most = Math.max(most, (data[at] ?? 0) - (data[at + 1] ?? 0));
    return most;
  }, png.toString('base64'));

const pick = (page: Page, name: string, mimeType: string, buffer: Buffer) =>
  page.getByLabel('Picture to draw over').first().setInputFiles({ name, mimeType, buffer });

/** Drops or pastes a file on the page, as the system would. */
const hand = (page: Page, how: 'drop' | 'paste', name: string, type: string, bytes: Buffer) =>
  page.evaluate(
    ({ event, fileName, mime, base64 }) => {
      const raw = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([raw], fileName, { type: mime }));
      if (event === 'drop') document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
      else document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
    },
    { event: how, fileName: name, mime: type, base64: bytes.toString('base64') },
  );

async function tracingOf(editor: Editor): Promise<Tracing> {
  await expect.poll(async () => (await editor.level()).tracing !== undefined).toBe(true);
  return (await editor.level()).tracing as Tracing;
}

const fresh = async (page: Page) => {
  await page.keyboard.press('Escape');
  await page.evaluate(() => window.__stillspot?.store.getState().newPlan());
};

describe('a picture to draw over, by mouse and keyboard', () => {
  let opened: OpenPage;
  let page: Page;
  let editor: Editor;
  beforeAll(async () => {
    opened = await openPage();
    page = opened.page;
    editor = await editorOf(page);
  });
  afterAll(() => opened.context.close());

  it('is picked on the empty sheet, brought to scale by two presses and a length, and seen on the sheet', async () => {
    await pick(page, 'cellar.png', 'image/png', await sketch(page, 'image/png'));
    const first = await tracingOf(editor);
    expect([first.width, first.height, first.name]).toEqual([800, 600, 'cellar.png']);
    await expect.poll(() => editor.message()).toContain('Press the two ends of a length');
    // Across its whole width: 400 pixels of the 800 are then 20 ft.
    const left: [number, number] = [first.at[0] - 200 * first.scale, first.at[1]];
    const right: [number, number] = [first.at[0] + 200 * first.scale, first.at[1]];
    await editor.press(...left);
    await editor.press(...right);
    await page.keyboard.type("20'");
    await page.keyboard.press('Enter');
    const scaled = await tracingOf(editor);
    // The presses are on whole pixels of the screen.
    expect(scaled.scale * 400).toBeGreaterThan(6096 * 0.99);
    expect(scaled.scale * 400).toBeLessThan(6096 * 1.01);
    await page.evaluate(() => window.__stillspot?.store.getState().fit());
    const [red, green] = await pixelAt(page, await editor.at(scaled.at));
    expect(red - green).toBeGreaterThan(60);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => (await tracingOf(editor)).scale).toBe(first.scale);
  });

  it('keeps its tool and its first point while the sheet is zoomed; Escape takes back the point, then the tool', async () => {
    const { at, scale } = await tracingOf(editor);
    await page.getByRole('button', { name: 'Straighten by two points' }).click();
    const tool = () => page.evaluate(() => window.__stillspot?.store.getState().tool.kind);
    await editor.press(at[0] - 100 * scale, at[1]);
    await page.mouse.wheel(0, -200);
    await page.keyboard.press('Escape');
    await expect.poll(() => tool()).toBe('tracing');
    await page.keyboard.press('Escape');
    await expect.poll(() => tool()).toBe('select');
    await page.evaluate(() => window.__stillspot?.store.getState().fit());
  });

  it('is straightened, shifted, faded, hidden and locked, each one step back', async () => {
    await fresh(page);
    await hand(page, 'paste', 'wall.jpg', 'image/jpeg', await sketch(page, 'image/jpeg'));
    const { at, scale } = await tracingOf(editor);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Straighten by two points' }).click();
    await editor.press(at[0] - 100 * scale, at[1]);
    await editor.press(at[0] + 100 * scale, at[1] + 20 * scale);
    const { turn } = await tracingOf(editor);
    expect(turn).toBeCloseTo((-Math.atan2(20, 200) * 180) / Math.PI, 0);
    await page.getByRole('button', { name: 'Shift by two points' }).click();
    const before = (await tracingOf(editor)).at;
    await editor.press(at[0], at[1]);
    await editor.press(at[0] + 1000, at[1]);
    const after = (await tracingOf(editor)).at;
    expect(Math.abs(after[0] - before[0] - 1000)).toBeLessThan(40);
    const fade = page.getByLabel(/Opacity/);
    await fade.focus();
    await fade.press('ArrowLeft');
    await expect.poll(async () => (await tracingOf(editor)).opacity).toBe(0.55);
    await page.getByLabel('Shown').uncheck();
    await expect.poll(async () => (await tracingOf(editor)).shown).toBe(false);
    await page.getByLabel('Shown').check();
    await page.getByLabel('Locked in place').check();
    await expect.poll(() => page.getByRole('button', { name: 'Shift by two points' }).count()).toBe(0);
    const steps = await editor.steps();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => editor.steps()).toBe(steps - 1);
    await expect.poll(async () => (await tracingOf(editor)).locked).toBe(false);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('is pulled to its place, nudged by arrows and pushed by a number, each one step back', async () => {
    await page.getByRole('button', { name: 'Drag it, or use the arrow keys' }).click();
    const before = (await tracingOf(editor)).at;
    const steps = await editor.steps();
    const from = await editor.at(before);
    await drag(page, from, { x: from.x + 60, y: from.y + 30 });
    const { scale } = await page.evaluate(() => window.__stillspot?.store.getState().viewport ?? { scale: 1 });
    const pulled = (await tracingOf(editor)).at;
    expect(distance(pulled, [before[0] + 60 / scale, before[1] + 30 / scale])).toBeLessThan(2 / scale);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Control+ArrowUp');
    // An inch to the right, a foot up.
    await expect
      .poll(async () => distance((await tracingOf(editor)).at, [pulled[0] + 25.4, pulled[1] - 304.8]))
      .toBeLessThan(0.01);
    await page.keyboard.press('Escape');
    await page.getByText('By numbers').click();
    const field = page.getByLabel('Move it down by');
    await field.fill("-1'");
    await field.press('Enter');
    await expect
      .poll(async () => distance((await tracingOf(editor)).at, [pulled[0] + 25.4, pulled[1] - 609.6]))
      .toBeLessThan(0.01);
    await expect.poll(() => editor.steps()).toBe(steps + 4);
    for (let step = 0; step < 4; step++) await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await tracingOf(editor)).at).toEqual(before);
  });

  it('is turned and sized by the grips of its frame, and Escape ends that', async () => {
    await page.getByRole('button', { name: 'Turn and size it by hand' }).click();
    const done = page.getByRole('button', { name: 'The picture is in place' });
    await done.waitFor();
    await page.locator('.tracing-frame canvas').first().waitFor();
    await page.evaluate(() => window.__stillspot?.store.getState().zoomBy(0.6));
    await settled(page); // the handles follow the sheet
    const before = await tracingOf(editor);
    const steps = await editor.steps();
    // The lower right handle, in the picture's own rotation.
    const angle = (before.turn * Math.PI) / 180;
    const [u, v] = [(before.width * before.scale) / 2, (before.height * before.scale) / 2];
    const corner = await editor.at([
      before.at[0] + u * Math.cos(angle) - v * Math.sin(angle),
      before.at[1] + u * Math.sin(angle) + v * Math.cos(angle),
    ]);
    await drag(page, corner, { x: corner.x - 60, y: corner.y - 45 });
    const after = await tracingOf(editor);
    expect(after.scale).toBeLessThan(before.scale * 0.98);
    expect(after.width).toBe(before.width);
    await expect.poll(() => editor.steps()).toBe(steps + 1);
    await page.keyboard.press('Escape');
    await done.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await tracingOf(editor)).scale).toBe(before.scale);
  });

  it('stays over a reload, goes into the saved file, and can be left out of it', async () => {
    await page.getByText(/^saved /).waitFor();
    await page.reload();
    editor = await editorOf(page);
    const { image } = await tracingOf(editor);
    const save = () => page.getByRole('button', { name: 'Save', exact: true }).click();
    await save();
    // If it is closed without an answer, nothing is saved.
    await page.keyboard.press('Escape');
    await save();
    expect(await accessibilityFindings(page)).toEqual([]);
    const whole = await download(page, () => page.getByRole('button', { name: 'With the picture' }).click());
    expect(whole.bytes.toString()).toContain(image);
    await expect.poll(() => editor.message()).toContain('with the picture');
    // The answer is kept, and can be changed beside the picture.
    const again = await download(page, save);
    expect(again.bytes.equals(whole.bytes)).toBe(true);
    await page.getByText('Draw over a picture').click();
    await page.getByLabel('A saved file').selectOption('Without it');
    const bare = await download(page, save);
    expect(bare.bytes.toString()).not.toContain('data:image');
    await expect.poll(() => editor.message()).toContain('without the picture');
    await expect.poll(async () => (await tracingOf(editor)).image).toBe(image);
    await page.getByRole('button', { name: 'Remove it' }).click();
    await expect.poll(async () => (await editor.level()).tracing).toBeUndefined();
  });

  it('is left out of the marked-up sheet, or shows there faintly', async () => {
    await fresh(page);
    await hand(page, 'drop', 'sheet.png', 'image/png', await sketch(page, 'image/png'));
    const { at } = await tracingOf(editor);
    await page.keyboard.press('Escape');
    await page.evaluate(
      ({ x, y }) =>
        window.__stillspot?.store.getState().addWalls(
          [
            [
              [x, y],
              [x + 3000, y],
            ],
          ],
          100,
        ),
      { x: at[0] - 1500, y: at[1] - 2500 },
    );
    await openStage(page, 'Plan sheet');
    // Each sheet is its own file: the first one is tested.
    const save = () => page.getByRole('button', { name: 'Save the drawing (SVG)' }).click();
    const drawing = () => download(page, save, /(?<!-[2-9])\.svg$/);
    expect((await drawing()).bytes.toString()).not.toContain('<image');
    await page.getByLabel('Show the picture that it was drawn over, faintly').check();
    expect((await drawing()).bytes.toString()).toContain('<image href="data:image/png;base64,');
    // The browser draws it: the sheet has a faint red somewhere, which nothing else has.
    const { bytes } = await download(
      page,
      () => page.getByRole('button', { name: 'Save the picture (PNG)' }).click(),
      /\.png$/,
    );
    expect(await mostlyRed(page, bytes)).toBeGreaterThan(20);
  });

  it('from a large photo is drawn down to what a plan can carry, and says so', async () => {
    await fresh(page);
    await hand(page, 'drop', 'large.jpg', 'image/jpeg', await sketch(page, 'image/jpeg', 4000, 3000));
    const { width, height, image } = await tracingOf(editor);
    expect([width, height]).toEqual([2400, 1800]);
    expect(image.length).toBeLessThan(1_500_000);
    await expect
      .poll(() => editor.message())
      .toMatch(/^Reduced from 4000 by 3000 to 2400 by 1800 pixels, (?:0\.\d MB|less than 0\.1 MB) of the plan\./);
  });

  it('from a phone held upright stands upright', async () => {
    await fresh(page);
    const photo = await sketch(page, 'image/jpeg', 400, 300);
    // Exif 2.32, tag 0x0112: 6 is "turn clockwise to show".
    const app1 = Buffer.from('ffe1002245786966000049492a00080000000100120103000100000006000000000000000000', 'hex');
    app1.writeUInt16BE(app1.length - 2, 2);
    await hand(
      page,
      'drop',
      'upright.jpg',
      'image/jpeg',
      Buffer.concat([photo.subarray(0, 2), app1, photo.subarray(2)]),
    );
    const { width, height } = await tracingOf(editor);
    expect([width, height]).toEqual([300, 400]);
  });

  it.each([
    ['notes.png', 'image/png', 'no picture at all', 'notes.png is not a PNG, JPEG or WebP picture.'],
    ['half.jpg', 'image/jpeg', '\xff\xd8\xff\xe0 torn', 'half.jpg could not be read: the file is damaged.'],
    ['photo.heic', 'image/heic', '\0\0\0\x18ftypheic', 'photo.heic is a HEIC photo, which this browser cannot read.'],
    ['scan.pdf', 'application/pdf', '%PDF-1.7', 'scan.pdf is a PDF. Save the page as a picture'],
    [
      'wave.png',
      'image/png',
      `\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x08\0\0\0\x08\x08\x02\0\0\0....\0\0\0\x08acTL\0\0\0\x02\0\0\0\0....`,
      'wave.png moves: it holds several pictures in turn.',
    ],
    [
      'bomb.png',
      'image/png',
      `\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\xff\xff\0\0\xff\xff\x08\x02\0\0\0....`,
      'bomb.png is too large, 65535 by 65535 pixels.',
    ],
  ])('%s: what cannot be read is refused in words, and nothing changes', async (name, type, text, words) => {
    await fresh(page);
    await hand(page, 'drop', name, type, Buffer.from(text, 'latin1'));
    await expect.poll(() => editor.message()).toContain(words);
    await expect.poll(async () => (await editor.level()).tracing).toBeUndefined();
    opened.expectNoTroubles();
  });

  it('is worked by keyboard alone', async () => {
    await fresh(page);
    await hand(page, 'paste', 'keys.png', 'image/png', await sketch(page, 'image/png'));
    const { scale } = await tracingOf(editor);
    // The scale tool is active: the crosshair goes to both ends.
    await page.locator('.plan-canvas').focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    for (let step = 0; step < 10; step++) await page.keyboard.press('Control+ArrowRight');
    await page.keyboard.press('Enter');
    await page.getByLabel('How long is that?').waitFor();
    await page.keyboard.type('20');
    await page.keyboard.press('Enter');
    // Ten steps of a foot are entered as 20 ft.
    await expect.poll(async () => (await tracingOf(editor)).scale).toBeCloseTo(scale * 2, 6);
  });
});

it('a picture is brought to scale by finger', async () => {
  const { page, context } = await openPage({ touch: true, viewport: { width: 1024, height: 768 } });
  const editor = await editorOf(page);
  await pick(page, 'touch.webp', 'image/webp', await sketch(page, 'image/webp'));
  const { at, scale } = await tracingOf(editor);
  for (const x of [at[0] - 100 * scale, at[0] + 100 * scale]) {
    const point = await editor.at([x, at[1]]);
    await page.touchscreen.tap(point.x, point.y);
  }
  // The field keeps its focus after the tap.
  await page.keyboard.type('3 m');
  await page.getByRole('button', { name: 'Set the scale' }).tap();
  await expect.poll(async () => (await tracingOf(editor)).scale * 200).toBeGreaterThan(3000 * 0.98);
  await expect.poll(async () => (await tracingOf(editor)).scale * 200).toBeLessThan(3000 * 1.02);
  // From one point to another by one drag of the finger.
  const now = await tracingOf(editor);
  // The button is beside the message, also on a level without walls.
  await page.getByRole('button', { name: 'Straighten it', exact: true }).tap();
  const side = (x: number, y: number) => editor.at([now.at[0] + x * now.scale, now.at[1] + y * now.scale]);
  await touchDrag(page, await side(-100, 0), await side(100, -20));
  await expect.poll(async () => (await tracingOf(editor)).turn).toBeCloseTo((Math.atan2(20, 200) * 180) / Math.PI, 0);
  const straight = (await tracingOf(editor)).at;
  await page.getByRole('button', { name: 'Drag it, or use the arrow keys' }).tap();
  await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('tracing');
  await touchDrag(page, await editor.at(straight), await editor.at([straight[0] + 900, straight[1]]));
  await expect.poll(async () => Math.abs((await tracingOf(editor)).at[0] - straight[0] - 900)).toBeLessThan(60);
  // On a phone the panel covers the picture: it gives way to the frame.
  await page.setViewportSize({ width: 390, height: 844 });
  const panel = page.getByRole('button', { name: 'Draw panel' });
  await panel
    .or(page.getByRole('button', { name: 'Fold away: Draw' }))
    .first()
    .waitFor();
  if (await panel.isVisible()) await panel.tap();
  await page.getByRole('button', { name: 'Turn and size it by hand' }).tap();
  await panel.waitFor();
  await page.getByRole('button', { name: 'The picture is in place' }).tap();
  await context.close();
});
