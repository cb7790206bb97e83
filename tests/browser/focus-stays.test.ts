import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/commands/table.ts';
import { someOf } from '../helpers/how-many.ts';
import { STAGES } from './access-pages.ts';
import { type Editor, editorOf } from './editor.ts';
import { DESK, FURNACE, sample } from './hands.ts';
import { announcerReady, type OpenPage, openPage, settled } from './harness.ts';
import { openStage } from './samples.ts';

/** `STILLSPOT_FOCUS=all`: every button of every stage; else every fourth. */
const ALL = process.env.STILLSPOT_FOCUS === 'all';

let open: OpenPage;
let page: Page;
let editor: Editor;

/** Returns what has the focus after everything has been drawn: "body" if the focus was lost. */
async function focusAfter(): Promise<string> {
  await settled(page);
  await settled(page);
  return page.evaluate(() => {
    const at = document.activeElement;
    return at === null || at === document.body ? 'body' : at.id || at.textContent?.slice(0, 30) || at.tagName;
  });
}

/** Shows the plain basement with something selected and nothing open over it. It is opened again only if it was changed. */
async function begin(ids: readonly string[] = [DESK]): Promise<void> {
  await page.evaluate(
    ([plan, selected]) => {
      for (const each of document.querySelectorAll('dialog')) each.requestClose();
      const state = window.__stillspot?.store.getState();
      const mark = window as { begun?: unknown };
      state?.closeMenu();
      const isAsBegun =
        state?.plan === mark.begun && state?.tool.kind === 'select' && !document.querySelector('dialog');
      if (!isAsBegun) state?.openPlan(plan);
      mark.begun = window.__stillspot?.store.getState().plan;
      state?.select(selected);
      state?.setTracingFrameOpen(false);
    },
    [sample, ids] as const,
  );
  await page.locator('dialog').first().waitFor({ state: 'detached' });
}

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  // The focus guard loads after the start, together with the announcer.
  await announcerReady(page);
});

/** Key presses in Playwright's notation, for each command with its own keys. */
const KEYS: Readonly<Record<string, string>> = {
  ' ': 'Space',
  pageup: 'PageUp',
  pagedown: 'PageDown',
  contextmenu: 'ContextMenu',
};
const pressesOf = ({ shortcuts = [] }: (typeof COMMANDS)[number]) =>
  shortcuts.flatMap(({ keys, ctrl, shift }) =>
    (keys ?? []).map((key) => {
      const name =
        KEYS[key] ??
        (key.length === 1
          ? key
          : key.replace(/^(?:arrow)?./, (part) =>
              part.startsWith('arrow') ? `Arrow${part.slice(5).toUpperCase()}` : part.toUpperCase(),
            ));
      return [ctrl === 'down' ? 'Control+' : '', shift === 'down' ? 'Shift+' : '', name].join('');
    }),
  );

describe('the focus never falls to the page', () => {
  it('by the shortcut of every command, with the plan in focus', async () => {
    const lost: string[] = [];
    for (const command of someOf(COMMANDS, 10)) {
      // Only the first press of each command; the file picker belongs to the system.
      const [press] = pressesOf(command);
      if (!press || command.id === 'open') continue;
      await begin([FURNACE]);
      await page.evaluate(() => document.getElementById('sheet-of-plan')?.focus());
      await page.keyboard.press(press);
      if ((await focusAfter()) === 'body') lost.push(`${command.id}: ${press}`);
      await page.keyboard.press('Escape');
      if ((await focusAfter()) === 'body') lost.push(`Escape after ${command.id}`);
    }
    expect(lost).toEqual([]);
  }, 180_000);

  it('by every row of the menu of a thing, of several and of the floor', async () => {
    const lost: string[] = [];
    for (const ids of [[DESK], [DESK, FURNACE], []] as const) {
      await begin(ids);
      await openStage(page, 'Draw');
      const menu = async () => {
        await begin(ids);
        await page.evaluate(() => document.getElementById('sheet-of-plan')?.focus());
        await page.keyboard.press('Shift+F10');
        await page.getByRole('menuitem').first().waitFor();
      };
      await menu();
      const rows = await page.getByRole('menuitem').allTextContents();
      for (const [index, row] of someOf([...rows.entries()], 3)) {
        await menu();
        await page.getByRole('menuitem').nth(index).press('Enter');
        if ((await focusAfter()) === 'body') lost.push(`${ids.length} things: ${row}`);
      }
    }
    expect(lost).toEqual([]);
  }, 180_000);

  it.each(someOf([...STAGES, 'Visit'], 3))(
    'by the buttons of %s, pressed by Enter',
    async (stage) => {
      await begin();
      if (stage === 'Visit') await page.getByRole('button', { name: 'Visit', exact: true }).click();
      else await openStage(page, stage);
      /** Focuses a button of this stage by its index; returns its text, or null if there is none. */
      const focusButton = (index: number) =>
        page.evaluate((at) => {
          const plan = document.querySelector('.page')?.getAttribute('data-plan') === 'in-view';
          const all = [
            ...document.querySelectorAll<HTMLElement>(
              plan
                ? '.job button, .job summary, .side button, .sheet button'
                : '.stage-page button, .stage-page summary',
            ),
          ]
            .filter((each) => each.checkVisibility({ visibilityProperty: true }) && !each.matches(':disabled'))
            // Rows of one list do the same, so one is enough; printing and cameras belong to the system.
            .filter(
              (each, i, list) =>
                !/^(Print|Scan|Read it by the camera|Photo|Add photos)/.test(each.textContent ?? '') &&
                list.findIndex((one) => one.textContent === each.textContent) === i,
            );
          all[at]?.focus();
          return all[at]?.textContent ?? null;
        }, index);
      const lost: string[] = [];
      for (let index = 0; index < 60; index += ALL ? 1 : 4) {
        const words = await focusButton(index);
        if (words === null) break;
        await page.keyboard.press('Enter');
        if ((await focusAfter()) === 'body') lost.push(words);
        await begin();
        if (stage === 'Visit')
          await page.evaluate(() =>
            [...document.querySelectorAll<HTMLElement>('.test-line__visit:not([aria-current])')][0]?.click(),
          );
        else await openStage(page, stage);
      }
      expect(lost).toEqual([]);
      expect(await editor.level()).toBeDefined();
    },
    180_000,
  );
});
