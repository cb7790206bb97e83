import { beforeAll, describe, expect, it } from 'vitest';
import { TAPE_FORMS } from '../src/editor/tape/forms.ts';
import { type Editor, editorOf } from './editor.ts';
import { type OpenPage, openPage } from './harness.ts';

/** A laser tape that acts as a keyboard: the text that it types is a length, whatever has the focus. */
describe('a laser tape that types', () => {
  let open: OpenPage;
  let editor: Editor;

  beforeAll(async () => {
    open = await openPage();
    editor = await editorOf(open.page);
    await open.page.waitForFunction(() => window.__stillspot?.tape.getState().ready);
    // The rows about the plan are a pixel higher in the page's own font, and the plan is fitted again to the remaining space.
    await open.page.evaluate(() => document.fonts.ready.then(() => undefined));
    // The time between keys depends on the machine here; `key-burst.test.ts` tests the times.
    await open.page.evaluate(() => window.__stillspot?.tape.setState({ gap: 5000 }));
    await open.page.evaluate(() => window.__stillspot?.store.getState().newPlan());
  });

  /** Types the keys of the tape, with Enter at the end. */
  const type = async (text: string) => {
    await open.page.keyboard.type(text);
    await open.page.keyboard.press('Enter');
  };
  const tape = () => open.page.evaluate(() => window.__stillspot?.tape.getState().reading);
  const drawn = () =>
    open.page.evaluate(() => {
      const state = window.__stillspot?.store.getState();
      // The row above the plan may become a pixel higher with its text, and the plan is fitted to the remaining space.
      const { scale = 0, x = 0, y = 0 } = state?.viewport ?? {};
      const viewport = { scale, x: Math.round(x / 10), y: Math.round((y + 5) / 10) };
      return { plan: state?.plan, tool: state?.tool, viewport };
    });
  const line = () => open.page.locator('.message').last();

  it('with nothing asked: no tool, no edit, and the length is read back', async () => {
    await open.page.locator('.plan-canvas').focus();
    const before = await drawn();
    for (const [text] of TAPE_FORMS) {
      await type(text);
      expect(await drawn(), text).toEqual(before);
      expect(await tape(), text).toMatchObject({ kind: 'length', text });
    }
    expect(await line().textContent()).toContain('The laser tape read 3812 mm');
    await open.page.getByRole('button', { name: 'Discard it' }).click();
    expect(await tape()).toBeNull();
  });

  it('asks in which unit it types bare numbers, once, and remembers it', async () => {
    await open.page.locator('.plan-canvas').focus();
    const before = await drawn();
    await type('3.812');
    expect(await drawn()).toEqual(before);
    await open.page.getByRole('button', { name: 'm', exact: true }).click();
    expect(await line().textContent()).toContain('The laser tape read 3.812 m');
    await open.page.locator('.plan-canvas').focus();
    await type('2.5');
    expect(await tape()).toMatchObject({ kind: 'length', text: '2.5 m' });
    await open.page.getByRole('button', { name: 'Discard it' }).click();
  });

  it('while walls are drawn: each length is that of the next wall', async () => {
    await open.page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'wall' }));
    for (const [text, mm] of TAPE_FORMS) {
      await open.page.evaluate(() =>
        window.__stillspot?.store.getState().setChain({ corners: [[0, 0]], takenBack: [] }),
      );
      await open.page.keyboard.press('ArrowRight');
      await type(text);
      const corners = await open.page.evaluate(() => window.__stillspot?.store.getState().chain.corners);
      expect(corners?.length, text).toBe(2);
      expect(corners?.[1]?.[0], text).toBeCloseTo(mm, 3);
    }
    await open.page.evaluate(() => window.__stillspot?.store.getState().setChain({ corners: [], takenBack: [] }));
    await open.page.keyboard.press('Escape');
  });

  it('into the length that waits after a room is pulled: first across, then down', async () => {
    await open.page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'room-box' }));
    await editor.pull([0, 0], [4000, 3000]);
    await open.page.getByText('type it').waitFor();
    await type('3.812');
    await type('2.5');
    const walls = (await editor.level()).walls;
    const inside = walls
      .map(
        ({ from, to, thickness }) => Math.round((Math.hypot(to[0] - from[0], to[1] - from[1]) - thickness) * 10) / 10,
      )
      .sort((a, b) => a - b);
    expect(inside).toEqual([2500, 2500, 3812, 3812]);
  });

  it('what was read back goes into the length that is pressed next', async () => {
    await open.page.keyboard.press('Escape');
    await open.page.locator('.plan-canvas').focus();
    await type('3.5');
    await open.page.keyboard.press('l');
    const field = open.page.locator('.typed-length input');
    await field.waitFor();
    expect(await field.inputValue()).toBe('3.5 m');
    await open.page.keyboard.press('Enter');
    const lengths = (await editor.level()).walls.map(({ from, to, thickness }) =>
      Math.round(Math.hypot(to[0] - from[0], to[1] - from[1]) - thickness),
    );
    expect(lengths).toContain(3500);
  });

  it('whose unit nobody has said: a field takes it as it takes a hand, and the line over the sheet asks', async () => {
    await open.page.keyboard.press('Escape');
    await open.page.evaluate(() => window.__stillspot?.tape.setState({ unit: null }));
    const [wall] = (await editor.level()).walls;
    await open.page.evaluate((id) => window.__stillspot?.store.getState().select([id]), wall?.id ?? '');
    await open.page.getByRole('textbox', { name: 'Thickness', exact: true }).focus();
    await type('4.125');
    expect(await tape()).toEqual({ kind: 'bare', text: '4.125', isTaken: true });
    await open.page.getByRole('button', { name: 'in', exact: true }).click();
    expect(await tape()).toMatchObject({ kind: 'length', text: '4.125 in' });
    await open.page.getByRole('button', { name: 'Discard it' }).click();
    await open.page.evaluate(() => window.__stillspot?.tape.setState({ unit: 'm' }));
  });

  it('into a field of the panel, in the unit of the tape', async () => {
    await open.page.keyboard.press('Escape');
    const [wall] = (await editor.level()).walls;
    await open.page.evaluate((id) => window.__stillspot?.store.getState().select([id]), wall?.id ?? '');
    // The keys of the second length may come before a timer.
    await open.page.evaluate(() => {
      const { setTimeout } = window;
      window.setTimeout = ((call: () => void, ms = 0) => setTimeout(call, ms + 400)) as typeof window.setTimeout;
    });
    const field = open.page.getByRole('textbox', { name: 'Thickness', exact: true });
    for (const [text, mm] of [
      ['0.2', 200],
      ['6"13/16', 173.0375],
    ] as const) {
      await field.focus();
      await type(text);
      const changed = (await editor.level()).walls.find(({ id }) => id === wall?.id);
      expect(changed?.thickness, text).toBeCloseTo(mm, 3);
    }
    open.expectNoTroubles();
  });
});
