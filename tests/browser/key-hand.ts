import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { type Editor, editorOf } from './editor.ts';
import { announcerReady, type OpenPage, openPage } from './harness.ts';
import { pressedShift } from './pressed.ts';

/** A user with only a keyboard. Counts every key press, and a field that is typed once, together with the key that ends it. */
export class KeyHand {
  readonly actions: string[] = [];
  /** Actions after which the focus was lost to the page. */
  readonly stray: string[] = [];
  readonly refused: string[] = [];
  /** Controls that moved away when a key pressed them. */
  readonly shifted: string[] = [];
  /** Focused controls that were not visible (WCAG 2.2, 2.4.11). */
  readonly covered: string[] = [];
  /** Number of actions for which a column or a page scrolled: the browser scrolls the focused control into view. */
  scrolls = 0;
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async keys(what: string, ...pressed: readonly string[]): Promise<void> {
    for (const key of pressed) {
      // The link to the plan exists only while it has the focus.
      const press = () => this.page.keyboard.press(key);
      const isPress =
        key === 'Enter' && (await this.page.locator('button:focus, a:focus:not(.skip), summary:focus').count()) > 0;
      const moved = isPress ? await pressedShift(this.page, this.page.locator(':focus'), press) : void (await press());
      if (moved) this.shifted.push(`${what}: ${moved} px`);
      await this.done(`${what}: ${key}`);
    }
  }

  times(what: string, key: string, count: number): Promise<void> {
    return this.keys(what, ...Array.from({ length: count }, () => key));
  }

  /** Types into the focused control. */
  async type(what: string, text: string, end = 'Enter'): Promise<void> {
    await this.page.keyboard.type(text);
    await this.page.keyboard.press(end);
    await this.done(`${what}: ${text}`);
  }

  /** Presses Tab until the focused control has this name. */
  async tabTo(name: RegExp, key = 'Tab'): Promise<void> {
    for (let press = 0; press < 60; press++) {
      if (name.test(await this.focused())) return;
      await this.keys(`to ${name.source}`, key);
    }
    throw new Error(`Tab does not come to ${name.source}`);
  }

  /** Goes to a stage from wherever the focus is. */
  async toStage(name: string): Promise<void> {
    for (let press = 0; press < 6; press++) {
      if (await this.page.evaluate(() => document.activeElement?.closest('.stage-bar') !== null)) break;
      await this.keys('to the stages', 'F6');
    }
    await this.tabTo(new RegExp(`^${name}`));
    await this.keys(name, 'Enter');
  }

  /** Returns the name of the focused field or button. */
  private focused(): Promise<string> {
    return this.page.evaluate(() => {
      const at = document.activeElement;
      const isField = at instanceof HTMLInputElement || at instanceof HTMLSelectElement;
      const labels = isField ? [...(at.labels ?? [])].map((label) => label.textContent).join(' ') : '';
      return `${labels} ${at?.getAttribute('aria-label') ?? ''} ${at?.textContent ?? ''}`.replace(/\s+/g, ' ').trim();
    });
  }

  private async done(what: string): Promise<void> {
    this.actions.push(what);
    const { isStray, isCovered, isScrolled, refusal } = await this.page.evaluate(settledState);
    if (isStray) this.stray.push(what);
    if (isCovered) this.covered.push(what);
    if (isScrolled) this.scrolls += 1;
    if (refusal) this.refused.push(`${what}: ${refusal}`);
  }
}

interface SettledState {
  readonly isStray: boolean;
  readonly isCovered: boolean;
  readonly isScrolled: boolean;
  /** The message by which the app refuses the last action: at a field, or over the sheet. */
  readonly refusal: string;
}

/** Waits like `settled` and returns where the focus is, in one call because there are many keys. Runs in the page. */
async function settledState(): Promise<SettledState> {
  await new Promise<void>((done) => {
    setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(() => done())));
  });
  const at = document.activeElement ?? document.body;
  const { left, top, width, height } = at.getBoundingClientRect();
  const isSeen = [0.5, 0.05, 0.95].some((share) => {
    const seen = document.elementFromPoint(left + width * share, top + height * share);
    return seen !== null && (at.contains(seen) || seen.closest('label')?.contains(at));
  });
  const root = document.documentElement.dataset;
  const isScrolled = root.scrolled === 'yes';
  root.scrolled = 'no';
  const { message = '' } = window.__stillspot?.store.getState() ?? {};
  const isInvalid = document.querySelector('[aria-invalid="true"]') !== null;
  const words = document.querySelector('.message > p')?.textContent ?? message;
  const isRefusal = /too small|goes into a wall|does not fit|no closed room|no wall|only|cannot|longer than/i.test(
    words,
  );
  const refusal = isInvalid || isRefusal ? words || 'a field is refused' : '';
  return { isStray: at === document.body, isCovered: at !== document.body && !isSeen, isScrolled, refusal };
}

interface KeyboardPage {
  readonly open: OpenPage;
  readonly page: Page;
  readonly editor: Editor;
  readonly hand: KeyHand;
}

/** Opens an empty page for a user with only a keyboard. */
export async function openByKeyboard(): Promise<KeyboardPage> {
  const open = await openPage();
  const { page } = open;
  const editor = await editorOf(page);
  await announcerReady(page);
  await page.evaluate(() =>
    document.addEventListener('scroll', () => document.documentElement.setAttribute('data-scrolled', 'yes'), true),
  );
  return { open, page, editor, hand: new KeyHand(page) };
}

/** Expects that no focus was lost, nothing moved, was covered or refused, and that the numbers of actions and scrolls are within the limits. */
export function expectByKeyboard({ open, hand }: KeyboardPage, most: { actions: number; scrolls: number }): void {
  const { actions, stray, refused, shifted, covered, scrolls } = hand;
  console.log(
    `${actions.length} actions by keyboard alone; ${scrolls} scrolls, ${stray.length} stray, ${refused.length} refused, ${shifted.length} moved, ${covered.length} covered`,
  );
  expect({ stray, refused, shifted, covered }).toEqual({ stray: [], refused: [], shifted: [], covered: [] });
  expect(actions.length).toBeLessThanOrEqual(most.actions);
  expect(scrolls).toBeLessThanOrEqual(most.scrolls);
  open.expectNoTroubles();
}
