import { describe, expect, it } from 'vitest';
import { type OpenPage, openPage } from './harness.ts';
import { openSample } from './samples.ts';

/*
 * The second computation as a user sees it: reported under the verdict when the pointer rests, loaded only if there is a detector; if it
 * differs, no verdict is given.
 */

const TWICE = 'Computed twice, in two ways.';
let open: OpenPage;

/** Replaces the second computation by a worker that returns `answer`. */
async function openWithAnswer(answer: string): Promise<OpenPage> {
  open = await openPage();
  await open.page.context().route(/second-worker/, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: `addEventListener('message', ({ data: { number, plan } }) => postMessage({ number, opinion: ${answer} }));`,
    }),
  );
  await openSample(open.page, 'Plain basement');
  return open;
}

/** An opinion with one rule only for every detector. */
const ONE_RULE = `{ ok: true, levels: plan.levels.map(({ id, detectors }) => ({ id, detectors: detectors.map((one) => ({ id: one.id, verdict: 'blocked', checks: [
  { rule: 'ceiling', subject: null, measured: 12.5, required: 304.8, verdict: 'blocked', notRun: false } ] })) })) }`;

describe('the second computation', () => {
  it('is said under the verdict once it agrees', async () => {
    open = await openPage();
    await openSample(open.page, 'Plain basement');
    const slip = open.page.getByRole('region', { name: 'Verdict' });
    await slip.getByText(TWICE).waitFor();
    expect(await slip.getAttribute('data-verdict')).toBe('clear-of-drawn');
    open.expectNoTroubles();
  });

  it('is not loaded while there is no detector', async () => {
    open = await openPage();
    await open.page.getByText('No detector yet').first().waitFor();
    await open.page.waitForLoadState('networkidle');
    const loaded = await open.page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
    expect(loaded.filter((name) => /second-worker|recheck-(?!line)/.test(name))).toEqual([]);
  });

  it('makes the verdict unknown where it differs, tells both figures and offers the plan as a file', async () => {
    const { page } = await openWithAnswer(ONE_RULE);
    const slip = page.getByRole('region', { name: 'Verdict' });
    await slip.getByText('Computed twice, in two ways that differ').waitFor();
    expect(await slip.getAttribute('data-verdict')).toBe('unknown');
    expect(await slip.textContent()).toMatch(/Ceiling: [\d.]+ mm, clear; 12\.5 mm, blocked\./);
    const download = page.waitForEvent('download');
    await slip.getByRole('button', { name: 'Save the plan to send it' }).click();
    expect((await download).suggestedFilename()).toMatch(/\.plan\.json$/);
  });

  it('says that the verdict was computed once where it fails', async () => {
    const { page } = await openWithAnswer(`{ ok: false, cause: 'a wall has no end' }`);
    const slip = page.getByRole('region', { name: 'Verdict' });
    await slip.getByText('Computed once. The second computation gave no answer: a wall has no end.').waitFor();
    expect(await slip.getAttribute('data-verdict')).toBe('clear-of-drawn');
  });
});
