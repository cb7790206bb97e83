import { expect, it } from 'vitest';
import { editorOf } from './editor.ts';
import { openPage } from './harness.ts';

it('the list of keys shows the keys on a tablet too: it may have a keyboard', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
  await editorOf(page);
  await page.keyboard.press('?');
  const list = page.getByRole('table', { name: 'Keys and what they do' });
  await list.waitFor();
  const rows = await list.getByRole('row').count();
  expect(rows).toBeGreaterThan(10);
  expect(await list.locator('kbd').filter({ visible: true }).count()).toBe(rows);
  expectNoTroubles();
});
