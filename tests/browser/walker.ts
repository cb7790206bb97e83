import type { Locator, Page } from 'playwright-core';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { touchDrag } from './harness.ts';
import { broughtIntoView, pressedShift } from './pressed.ts';

/**
 * Seconds of the keystroke-level model (Card, Moran and Newell 1980; from memory): a key of an average typist, pointing with a mouse,
 * pressing or releasing its button, moving the hand from mouse to keys, and thinking about the next step.
 */
const SECONDS = { key: 0.28, point: 1.1, button: 0.1, home: 0.4, think: 1.35 } as const;

export interface Walk {
  readonly kind: 'click' | 'drag' | 'field' | 'key';
  readonly what: string;
  readonly seconds: number;
  /** The message by which the app refused it; "" if it did not. */
  readonly refused: string;
}

/**
 * A user with a mouse and a keyboard. Everything on the page is done through this class, so that every action is counted: a click, a drag, a
 * field that is typed with the key that ends it, and any single key. The page is operated at the speed of a machine,
 * or of a person when the walk is recorded.
 */
export class Walker {
  readonly actions: Walk[] = [];
  /** Number of presses for which a column had to be scrolled first. */
  scrolls = 0;
  /** Controls that moved away when they were pressed. */
  readonly shifted: string[] = [];
  /** Whether the hand is on the keys: moving it from the mouse to the keys takes time. */
  private onKeys = false;
  private readonly page: Page;
  private readonly editor: Editor;
  private readonly filmed: boolean;
  private readonly byFinger: boolean;

  private constructor(page: Page, editor: Editor, filmed: boolean, byFinger: boolean) {
    this.page = page;
    this.editor = editor;
    this.filmed = filmed;
    this.byFinger = byFinger;
  }

  static async on(page: Page, { filmed = false, byFinger = false } = {}): Promise<Walker> {
    return new Walker(page, await editorOf(page), filmed, byFinger);
  }

  /** Presses a button or another part of the page. */
  async click(target: Locator, what: string): Promise<void> {
    if (await broughtIntoView(this.page, target)) this.scrolls += 1;
    await this.act('click', what, this.toMouse() + SECONDS.point + 2 * SECONDS.button, async () => {
      const press = () => (this.byFinger ? target.tap() : target.click());
      const moved = await pressedShift(this.page, target, press);
      if (moved > 0) this.shifted.push(`${what}: ${moved} px`);
    });
  }

  /** Presses the sheet near a point, because nobody hits a point to the inch. */
  async press(at: XY, what: string, shift = false): Promise<void> {
    await this.act('click', what, this.toMouse() + SECONDS.point + 2 * SECONDS.button, async () => {
      if (shift) await this.page.keyboard.down('Shift');
      if (this.byFinger) {
        const { x, y } = await this.editor.at(at);
        await this.page.touchscreen.tap(x, y);
      } else await this.editor.press(...at);
      if (shift) await this.page.keyboard.up('Shift');
    });
  }

  /** Moves the mouse to show a direction: nothing is pressed, so it is no action. */
  async aim(at: XY): Promise<void> {
    await this.editor.move(...at);
  }

  async drag(from: XY, to: XY, what: string): Promise<void> {
    const seconds = this.toMouse() + 2 * SECONDS.point + 2 * SECONDS.button;
    await this.act('drag', what, seconds, async () => {
      if (this.byFinger) await touchDrag(this.page, await this.editor.at(from), await this.editor.at(to));
      else await this.editor.pull(from, to);
    });
  }

  /** Types into the requested or focused field, and ends with Enter or Tab. */
  async type(text: string, what: string, end: 'Enter' | 'Tab' = 'Enter'): Promise<void> {
    const seconds = this.toKeys() + (text.length + 1) * SECONDS.key;
    await this.act('field', `${what}: ${text}`, seconds, async () => {
      await this.page.keyboard.type(text);
      await this.page.keyboard.press(end);
    });
  }

  /** Makes sure that the box of a length has the focus: a finger opens the first one, and those after it open by themselves. */
  async asked(): Promise<void> {
    const field = this.page.locator('.length-box input').first();
    const opener = this.page.getByRole('button', { name: /Tap to type it|^Type the length of this wall/ });
    await field.or(opener).first().waitFor();
    if (await opener.isVisible()) await this.click(opener, 'to type');
    await field.waitFor();
  }

  /** Types a length of the placed item; a finger goes on to the next one by a button. */
  async length(text: string, what: string, end: 'Enter' | 'Tab' = 'Enter'): Promise<void> {
    const input = this.page.locator('.typed-length input');
    if (!this.byFinger) return this.type(text, what, end);
    await this.asked();
    if (end === 'Enter') return this.type(text, what);
    await input.fill(text);
    await this.next(`${what}: ${text}`);
  }

  /** Keeps a length unchanged and goes on to the next one. */
  async next(what: string): Promise<void> {
    if (this.byFinger) await this.click(this.page.getByRole('button', { name: 'Set, next', exact: true }), what);
    else await this.key('Tab', what);
  }

  async key(key: string, what: string): Promise<void> {
    await this.act('key', `${what}: ${key}`, this.toKeys() + SECONDS.key, () => this.page.keyboard.press(key));
  }

  get seconds(): number {
    return this.actions.reduce((sum, { seconds }) => sum + seconds, 0);
  }

  get corrections(): readonly Walk[] {
    return this.actions.filter(({ refused }) => refused !== '');
  }

  private toKeys(): number {
    const home = this.onKeys ? 0 : SECONDS.home;
    this.onKeys = true;
    return home;
  }

  private toMouse(): number {
    const home = this.onKeys ? SECONDS.home : 0;
    this.onKeys = false;
    return home;
  }

  /** Performs an action. Each counts with time to think, an upper bound: a user who knows the house types without a pause after taping. */
  private async act(kind: Walk['kind'], what: string, seconds: number, does: () => Promise<unknown>): Promise<void> {
    const whole = seconds + SECONDS.think;
    if (this.filmed) await this.page.waitForTimeout(whole * 1000);
    await does();
    this.actions.push({ kind, what, seconds: whole, refused: await this.refusal() });
  }

  /** Returns the message by which the app refuses the action: at the field, or over the sheet. */
  private async refusal(): Promise<string> {
    const invalid = await this.page.locator('.typed-length [aria-invalid="true"]').count();
    if (invalid > 0) return (await this.page.locator('#typed-length-status').textContent()) ?? 'refused';
    const message = await this.editor.message();
    return /closed/.test(message) ? '' : message;
  }
}
