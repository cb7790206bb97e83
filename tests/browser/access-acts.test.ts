import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Editor, editorOf } from './editor.ts';
import { DESK, freshSample, selectIds } from './hands.ts';
import { announcerReady, type OpenPage, openPage } from './harness.ts';
import { openStage, saved } from './samples.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

/** Starts recording all texts of the one live region. */
const listen = () =>
  page.evaluate(() => {
    const heard: string[] = [];
    const region = document.getElementById('announcer');
    new MutationObserver(() => heard.push(region?.textContent?.trim() ?? '')).observe(region as Node, {
      childList: true,
      characterData: true,
      subtree: true,
    });
    (window as unknown as { heard: string[] }).heard = heard;
  });
const heard = async () => (await page.evaluate(() => (window as unknown as { heard: string[] }).heard)).join(' | ');
const keys = async (...pressed: readonly string[]) => {
  for (const key of pressed) await page.keyboard.press(key);
};

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await announcerReady(page);
  await freshSample(editor);
  await saved(page);
  await page.locator('#announcer', { hasText: 'A1: ' }).waitFor({ state: 'attached' });
  await page.evaluate(() => document.getElementById('sheet-of-plan')?.focus());
});

describe('what a screen reader is told', () => {
  it.each<{ act: string; does: () => Promise<unknown>; says: RegExp }>([
    { act: 'a detector is selected', does: () => keys('Escape', 'n'), says: /A1 is selected: [a-z ]+\./ },
    { act: 'it is moved by a foot', does: () => keys('Control+ArrowRight'), says: /Moved A1 1 ft east\./ },
    { act: 'the move is undone', does: () => keys('Control+z'), says: /Undone: moved A1 1 ft east\./ },
    { act: 'the move is done again', does: () => keys('Control+y'), says: /Done again: moved A1 1 ft east\./ },
    {
      act: 'its verdict changes within one word',
      does: () => keys('Control+ArrowLeft', 'Control+ArrowLeft', 'Control+ArrowLeft'),
      says: /Moved A1 .+ west\. A1: [a-z ]+\. .+/,
    },
    {
      act: 'a thing is turned',
      does: async () => {
        await selectIds(editor, [DESK]);
        await keys('r');
      },
      says: /Desk is now turned to \d+°/,
    },
    { act: 'it is copied', does: () => keys('Control+d'), says: /Added Desk/ },
    { act: 'the copy is deleted', does: () => keys('Delete'), says: /Deleted Desk/ },
    { act: 'the deletion is undone', does: () => keys('Control+z'), says: /Undone: deleted Desk/ },
    {
      act: 'a detector is in hand, with what Enter does',
      does: () => keys('8', '1'),
      says: /Here: .+ Enter places the detector\./,
    },
    { act: 'it is placed', does: () => keys('Enter'), says: /Added A3\. A3: [a-z ]+\./ },
    {
      act: 'a door is deleted',
      does: async () => {
        const door = (await editor.level()).openings.find(({ kind }) => kind === 'door');
        await selectIds(editor, [door?.id ?? '']);
        await keys('Delete');
      },
      says: /Deleted door 1 of [A-Z]/,
    },
    {
      act: 'a level is added',
      does: () => page.getByRole('button', { name: 'Add level' }).first().press('Enter'),
      says: /is in view\. Added level /,
    },
    {
      act: 'a condition of the house is answered',
      does: async () => {
        await openStage(page, 'House');
        await page.locator('.condition').first().getByRole('button', { name: 'Met', exact: true }).press('Enter');
      },
      says: /: met\./i,
    },
    {
      act: 'a photo is added',
      does: async () => {
        await openStage(page, 'Log');
        const png = await page.evaluate(async () => {
          const canvas = new OffscreenCanvas(40, 30);
          canvas.getContext('2d')?.fillRect(0, 0, 20, 20);
          const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer());
          return btoa(String.fromCharCode(...bytes));
        });
        await page.locator('#stage-log details').evaluateAll((all) => {
          for (const fold of all) (fold as HTMLDetailsElement).open = true;
        });
        const file = { name: 'a1.png', mimeType: 'image/png', buffer: Buffer.from(png, 'base64') };
        await page.locator('input[aria-label="Photos of A1"]').setInputFiles(file);
      },
      says: /1 photo of A1 added\./,
    },
    {
      act: 'the time of placement is written, and the verdicts of time and house follow',
      does: () =>
        page.evaluate(() =>
          window.__stillspot?.store.getState().run((plan) => ({
            ...plan,
            visit: { ...plan.visit, start: '2026-03-07T18:00:00-05:00', end: '2026-03-08T18:00:00-05:00' },
          })),
        ),
      says: /Exposure: [a-z-]+\. /,
    },
    {
      act: 'a result is written, and what it comes to follows',
      does: async () => {
        await openStage(page, 'Results');
        await page.getByLabel(/^Result of A1/).fill('5.1');
        await keys('Enter');
      },
      says: /A1: These results are invalid: do not use them/,
    },
  ])('$act', async ({ does, says }) => {
    await listen();
    await does();
    await expect.poll(heard).toMatch(says);
    expect(await heard()).not.toMatch(/\bsaved\b|saving/);
  });

  it('no trouble came up on the way', () => open.expectNoTroubles());
});
