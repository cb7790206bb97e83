import type { Page } from 'playwright-core';
import { openStage } from './samples.ts';

/** A page or dialog of the app, which can be shown from any other one after `leave`. */
export interface AccessPage {
  readonly name: string;
  readonly show: (page: Page) => Promise<unknown>;
  /** Goes back to the page below. Missing for a page that needs no closing. */
  readonly leave?: (page: Page) => Promise<unknown>;
}

export const STAGES = ['Property', 'Draw', 'Place', 'Time', 'House', 'Log', 'Results', 'Plan sheet'] as const;

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).first();
const dialog = (page: Page) => page.locator('dialog[open]');
async function closeDialog(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await dialog(page).waitFor({ state: 'detached' });
}

/** All eight stages, the visits, Plans, the quick card and the dialogs, with the open plan. */
export const ACCESS_PAGES: readonly AccessPage[] = [
  ...STAGES.map((name): AccessPage => ({ name, show: (page) => openStage(page, name) })),
  {
    name: 'Visit',
    show: async (page) => {
      await button(page, 'Visit').click();
      await page.getByRole('heading', { level: 2, name: 'Visit' }).waitFor();
    },
  },
  {
    name: 'Serial number by the camera',
    show: async (page) => {
      await button(page, 'Visit').click();
      await button(page, /^Camera: serial number of /).click();
      await page.getByRole('dialog', { name: /^Serial number of / }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'Plans',
    show: async (page) => {
      await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
      await page.getByRole('heading', { name: 'Plans', exact: true }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'Quick card',
    show: async (page) => {
      await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
      await dialog(page)
        .getByRole('button', { name: /quick card/i })
        .first()
        .click();
      await page.getByRole('heading', { name: 'Quick card' }).waitFor();
      await page.getByRole('heading', { name: '1. The leaflet of your kit' }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'Keys',
    show: async (page) => {
      await openStage(page, 'Draw');
      await page.keyboard.press('?');
      await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'Quality book',
    show: async (page) => {
      await openStage(page, 'Results');
      await button(page, /^Quality book/).click();
      await page.getByRole('dialog', { name: 'Quality book' }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'The plan sheet',
    show: async (page) => {
      await openStage(page, 'Plan sheet');
      await button(page, 'Preview the plan sheet').click();
      await page.getByRole('img', { name: /^Sheet 1 of / }).waitFor();
    },
    leave: closeDialog,
  },
  {
    name: 'Menu of commands',
    show: async (page) => {
      await openStage(page, 'Draw');
      await page.evaluate(() => {
        const { plan, select } = window.__stillspot?.store.getState() ?? {};
        select?.([plan?.levels[0]?.fixtures[0]?.id ?? '']);
        document.getElementById('sheet-of-plan')?.focus();
      });
      await page.keyboard.press('Shift+F10');
      await page.getByRole('menu').waitFor();
    },
    leave: async (page) => {
      await page.keyboard.press('Escape');
      await page.getByRole('menu').waitFor({ state: 'detached' });
    },
  },
];
