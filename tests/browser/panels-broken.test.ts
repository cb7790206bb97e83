import { describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, download, openPage } from './harness.ts';
import { openSample, saved, stageButton } from './samples.ts';

describe('a mistake of ours', () => {
  it('keeps the plan, offers to save it, and goes on after the last step is taken back', async () => {
    const { page } = await openPage();
    await openSample(page, 'Plain basement');
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    // No file with such a list of rules can be opened, so the screen may rely on that: this represents any fault.
    await page.evaluate(() => {
      const { store } = window.__stillspot ?? {};
      const plan = store?.getState().plan;
      if (plan) store?.setState({ plan: { ...plan, protocol: { profile: 'no such list', overrides: [] } } });
    });
    await page.getByRole('heading', { name: 'Something in Stillspot went wrong' }).first().waitFor();
    const { name, bytes } = await download(page, () =>
      page.getByRole('button', { name: 'Save the plan', exact: true }).first().click(),
    );
    expect(name).toBe('finch-lane-basement.plan.json');
    expect(JSON.parse(bytes.toString('utf8'))).toMatchObject({ title: 'Finch Lane, basement' });
    await page.getByRole('button', { name: 'Undo the last step' }).first().click();
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
  });

  it.each(
    someOf(
      [
        [390, 844],
        [1440, 900],
      ] as const,
      1,
    ),
  )('in the sheet alone leaves all else as it is, at %d by %d', async (width, height) => {
    const { page, context } = await openPage({ viewport: { width, height } });
    await openSample(page, 'Plain basement');
    await saved(page);
    // Simulates a device without memory for another canvas.
    await context.addInitScript(() => {
      const state = window as unknown as { isOutOfMemory: boolean };
      state.isOutOfMemory = true;
      const { getContext } = HTMLCanvasElement.prototype;
      HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...args: never) {
        return state.isOutOfMemory ? null : Reflect.apply(getContext, this, args);
      } as typeof getContext;
    });
    await page.reload();
    const fault = page.getByRole('heading', { name: 'Something in Stillspot went wrong' });
    await fault.waitFor();
    expect(await fault.count()).toBe(1);
    expect(await page.locator('.plan-canvas').count()).toBe(0);
    // It is in the place of the plan.
    const inPlace = await page.evaluate(() => {
      const [told, plan] = ['.broken', '.sheet__plan'].map((each) =>
        document.querySelector(each)?.getBoundingClientRect(),
      );
      return (
        told &&
        plan &&
        told.left >= plan.left &&
        told.right <= plan.right &&
        told.top >= plan.top &&
        told.bottom <= plan.bottom
      );
    });
    expect(inPlace).toBe(true);
    expect(await accessibilityFindings(page)).toEqual([]);
    await stageButton(page, 'Time').click();
    await page.getByRole('heading', { name: 'Time', exact: true }).waitFor();
    await stageButton(page, 'Place').click();
    await page.evaluate(() => {
      (window as unknown as { isOutOfMemory: boolean }).isOutOfMemory = false;
    });
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.locator('.plan-canvas').waitFor();
    expect(await fault.count()).toBe(0);
  });
});
