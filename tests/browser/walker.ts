import type { Locator, Page } from 'playwright-core';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { touchDrag } from './harness.ts';
import { broughtIntoView, pressedShift } from './pressed.ts';

/**
 * Seconds of the keystroke-level model (Card, Moran and Newell 1980; from memory): a key of an average typist, pointing with a mouse,
 * pressing or letting go of its button, the hand from mouse to keys, and thinking what comes next.
 */
const SECONDS = { key: 0.28, point: 1.1, button: 0.1, home: 0.4, think: 1.35 } as const;

export interface Walk {
  readonly kind: 'click' | 'drag' | 'field' | 'key';
  readonly what: string;
  readonly seconds: number;
  /** Whether the app refused it, in words. */
  readonly refused: string;
}

/**
 * A person with a mouse and a keyboard. Nothing is done on the page but through here, so that nothing goes uncounted: a click, a drag, a
 * field that is typed with the key that ends it, and any key that stands alone. The page itself is worked at the speed of a machine,
 * or of a person when the walk is filmed.
 */
export class Walker {
  readonly actions: Walk[] = [];
  /** Presses for which a column had to be scrolled first. */
  scrolls = 0;
  /** What moved away under the hand that pressed it. */
  readonly shifted: string[] = [];
  /** Where the hand is: from the mouse to the keys costs a moment. */
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

  /** A press on a button or another part of the page. */
  async click(target: Locator, what: string): Promise<void> {
    if (await broughtIntoView(this.page, target)) this.scrolls += 1;
    await this.act('click', what, this.toMouse() + SECONDS.point + 2 * SECONDS.button, async () => {
      const press = () => (this.byFinger ? target.tap() : target.click());
      const moved = await pressedShift(this.page, target, press);
      if (moved > 0) this.shifted.push(`${what}: ${moved} px`);
    });
  }

  /** A press on the sheet, about where a hand comes to: nobody hits a point to the inch. */
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

  /** The mouse comes to show a direction: nothing is pressed, so it is no action. */
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

  /** Types into what is asked for, or what has the keys, and ends it by Enter or Tab. */
  async type(text: string, what: string, end: 'Enter' | 'Tab' = 'Enter'): Promise<void> {
    const seconds = this.toKeys() + (text.length + 1) * SECONDS.key;
    await this.act('field', `${what}: ${text}`, seconds, async () => {
      await this.page.keyboard.type(text);
      await this.page.keyboard.press(end);
    });
  }

  /** Sees that the keys are in the box of a length: a finger asks for the first one, and those after it open by themselves. */
  async asked(): Promise<void> {
    const field = this.page.locator('.length-box input').first();
    const opener = this.page.getByRole('button', { name: /Tap to type it|^Type the length of this wall/ });
    await field.or(opener).first().waitFor();
    if (await opener.isVisible()) await this.click(opener, 'to type');
    await field.waitFor();
  }

  /** Types a length of what was put down; a finger goes on to the next one by a button. */
  async length(text: string, what: string, end: 'Enter' | 'Tab' = 'Enter'): Promise<void> {
    const input = this.page.locator('.typed-length input');
    if (!this.byFinger) return this.type(text, what, end);
    await this.asked();
    if (end === 'Enter') return this.type(text, what);
    await input.fill(text);
    await this.next(`${what}: ${text}`);
  }

  /** Leaves a length as it is and goes on to the next one. */
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

  /** Each action is thought about: an upper bound, for one who knows the house goes from tape to key without a pause. */
  private async act(kind: Walk['kind'], what: string, seconds: number, does: () => Promise<unknown>): Promise<void> {
    const whole = seconds + SECONDS.think;
    if (this.filmed) await this.page.waitForTimeout(whole * 1000);
    await does();
    this.actions.push({ kind, what, seconds: whole, refused: await this.refusal() });
  }

  /** What the app says against it: at the field, or over the sheet. */
  private async refusal(): Promise<string> {
    const invalid = await this.page.locator('.typed-length [aria-invalid="true"]').count();
    if (invalid > 0) return (await this.page.locator('#typed-length-status').textContent()) ?? 'refused';
    const message = await this.editor.message();
    return /closed/.test(message) ? '' : message;
  }
}
