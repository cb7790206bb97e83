import { describe, expect, it } from 'vitest';
import { download, openPage } from './harness.ts';
import { pickSample } from './samples.ts';

describe('a mistake of ours', () => {
  it('keeps the plan, offers to save it, and goes on after the last step is taken back', async () => {
    const { page } = await openPage();
    await pickSample(page, /^Plain basement/);
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    // No file with such a list of rules is ever opened, so the screen may count on it: this stands for any mistake.
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
});
