import type { Page } from 'playwright-core';
import { settled } from './harness.ts';

/** A person with a keyboard alone: every key press counts, and a field that is typed once, with the key that ends it. */
export class KeyHand {
  readonly actions: string[] = [];
  /** After these the focus had fallen to the page. */
  readonly stray: string[] = [];
  readonly refused: string[] = [];
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async keys(what: string, ...pressed: readonly string[]): Promise<void> {
    for (const key of pressed) {
      await this.page.keyboard.press(key);
      await this.done(`${what}: ${key}`);
    }
  }

  times(what: string, key: string, count: number): Promise<void> {
    return this.keys(what, ...Array.from({ length: count }, () => key));
  }

  /** Types into what has the keyboard. */
  async type(what: string, text: string, end = 'Enter'): Promise<void> {
    await this.page.keyboard.type(text);
    await this.page.keyboard.press(end);
    await this.done(`${what}: ${text}`);
  }

  /** Goes by Tab to what is called so. */
  async tabTo(name: RegExp, key = 'Tab'): Promise<void> {
    for (let press = 0; press < 60; press++) {
      if (name.test(await this.focused())) return;
      await this.keys(`to ${name.source}`, key);
    }
    throw new Error(`Tab does not come to ${name.source}`);
  }

  /** Goes to a stage from wherever the keyboard is. */
  async toStage(name: string): Promise<void> {
    for (let press = 0; press < 6; press++) {
      if (await this.page.evaluate(() => document.activeElement?.closest('.stage-bar') !== null)) break;
      await this.keys('to the stages', 'F6');
    }
    await this.tabTo(new RegExp(`^${name}`));
    await this.keys(name, 'Enter');
  }

  /** What the field or button that has the keyboard is called. */
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
    await settled(this.page);
    if (await this.page.evaluate(() => document.activeElement === document.body)) this.stray.push(what);
    const words = await this.refusal();
    if (words) this.refused.push(`${what}: ${words}`);
  }

  /** What the app says against the last action: at a field, or over the sheet. */
  private refusal(): Promise<string> {
    return this.page.evaluate(() => {
      const { message = '' } = window.__stillspot?.store.getState() ?? {};
      const field = document.querySelector('[aria-invalid="true"]');
      const words = document.querySelector('.message > p')?.textContent ?? message;
      const isRefusal = /too small|goes into a wall|does not fit|no closed room|no wall|only|cannot|longer than/i.test(
        words,
      );
      return field || isRefusal ? words || 'a field is refused' : '';
    });
  }
}
